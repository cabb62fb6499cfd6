//! Where every value of the catalogue comes from.

use chemistry::alloy::ALLOYS;
use chemistry::element::ELEMENTS;
use chemistry::solution::SOLUTIONS;
use chemistry::source::WORKS;
use chemistry::{Source, material, substance, touch};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// Every source of every value, with the place it stands.
fn sources() -> Vec<(String, Source)> {
    let mut all = Vec::new();
    for e in ELEMENTS {
        all.push((e.id.to_owned(), e.molar_mass.source));
        all.push((e.id.to_owned(), e.density.source));
        all.push((e.id.to_owned(), e.valences.source));
        all.extend(e.resistivity.source().map(|s| (e.id.to_owned(), s)));
    }
    for a in ALLOYS {
        all.push((a.id.to_owned(), a.parts.source));
        all.push((a.id.to_owned(), a.density.source));
    }
    for s in substance::SUBSTANCES {
        all.extend(s.metal_share.source().map(|x| (s.id.to_owned(), x)));
    }
    for s in SOLUTIONS {
        s.each_source(|column, source| all.push((format!("{} {column:?}", s.id), source)));
    }
    for (base, family, t) in touch::cells() {
        all.push((format!("{base:?} {family:?}"), t.source));
    }
    all
}

#[test]
fn no_locator_is_empty() {
    let mut counts = [0; 4];
    for (place, source) in sources() {
        match source {
            Source::Published { work, locator } => {
                assert!(!locator.is_empty(), "{place}");
                assert!(WORKS.iter().any(|w| w.id == work), "{place}");
                counts[0] += 1;
            }
            Source::Computed { .. } => counts[1] += 1,
            Source::CommonPractice => counts[2] += 1,
            Source::FromMemory => counts[3] += 1,
        }
    }
    println!("published, computed, common practice, from memory: {counts:?}");
    assert!(counts.iter().all(|n| *n > 0));
}

#[test]
fn no_id_stands_twice() {
    fn once<'a>(what: &str, ids: impl Iterator<Item = &'a str>) {
        let mut seen = BTreeSet::new();
        for id in ids {
            assert!(!id.is_empty() && seen.insert(id), "{what}: {id:?}");
        }
    }
    let elements = ELEMENTS.iter().map(|e| e.id);
    once("metals", elements.chain(ALLOYS.iter().map(|a| a.id)));
    once("solutions", SOLUTIONS.iter().map(|s| s.id));
    once("substances", substance::SUBSTANCES.iter().map(|s| s.id));
    once("materials", material::MATERIALS.iter().map(|m| m.id));
}

#[test]
fn works_are_listed_once_and_used() {
    let ids: BTreeSet<_> = WORKS.iter().map(|w| w.id.id()).collect();
    assert_eq!(ids.len(), WORKS.len());
    let titles: BTreeSet<_> = WORKS.iter().map(|w| w.title).collect();
    assert_eq!(titles.len(), WORKS.len());
    // Used by a value here, or named in the code of some crate (constants, methods of other rooms).
    let mut code = String::new();
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates");
    read(&crates, &mut code);
    for work in WORKS {
        let by_value = sources()
            .iter()
            .any(|(_, s)| matches!(s, Source::Published { work: used, .. } if *used == work.id));
        let by_code = code.contains(&format!("WorkId::{:?}", work.id));
        assert!(by_value || by_code, "{} is cited by nothing", work.id.id());
    }
}

fn read(folder: &Path, into: &mut String) {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return;
    };
    let paths: Vec<PathBuf> = entries.flatten().map(|e| e.path()).collect();
    for path in paths {
        if path.is_dir() {
            read(&path, into);
        } else if path.extension().is_some_and(|e| e == "rs") {
            into.push_str(&std::fs::read_to_string(&path).unwrap_or_default());
        }
    }
}
