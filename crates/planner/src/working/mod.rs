//! How the answer was worked out, step by step, from the likely values.

mod bench_side;
mod formulas;
mod step;
mod surface;

pub use formulas::FORMULAS;

use crate::advise::limiting;
use crate::answer::{Origin, Ruling, SourceText, Whence, Working};
use crate::inputs::{InputId, Inputs};
use crate::path::FieldPath;
use crate::plan::{Plan, PlanBath};
use crate::run::Run;
use crate::value::Named;
use crate::whence::whence;
use chemistry::source::{MethodId, Source};
use quantity::{AnyQuantity, Length, Quantity};

fn count(name: &'static str, n: f64) -> Named {
    Named {
        name,
        value: AnyQuantity {
            key_unit: "count",
            si: n,
        },
    }
}

/// Where the density of an element or alloy comes from.
pub(crate) fn density_source(id: &str) -> Option<Source> {
    match chemistry::Metal::of(id)? {
        chemistry::Metal::Element(e) => Some(e.density.source),
        chemistry::Metal::Alloy(a) => Some(a.density.source),
    }
}

struct Writer<'a> {
    plan: &'a Plan,
    inputs: &'a Inputs,
    run: &'a Run,
    rulings: &'a [Option<Ruling>],
    all: Vec<Working>,
}

/// Writes the working of `run`, which was made with the likely `inputs`; `rulings` say what ruled each step's density.
pub fn write(
    plan: &Plan,
    inputs: &Inputs,
    run: &Run,
    rulings: &[Option<Ruling>],
    class: Option<&crate::job::Class>,
) -> Vec<Working> {
    let mut w = Writer {
        plan,
        inputs,
        run,
        rulings,
        all: Vec::new(),
    };
    for n in 0..plan.pieces.len() {
        w.areas(n);
    }
    for n in 0..plan.steps.len() {
        let step = &plan.steps[n];
        let Some(bath) = plan.bath(step) else {
            continue;
        };
        let before = &plan.steps[..n];
        if !before
            .iter()
            .any(|s| plan.bath(s).is_some_and(|b| b.id == bath.id))
        {
            let last = plan
                .steps
                .iter()
                .rposition(|s| plan.bath(s).is_some_and(|b| b.id == bath.id));
            w.equivalent(bath, n, last.unwrap_or(n));
        }
        w.step(n, bath);
    }

    for n in 0..plan.pieces.len() {
        w.fit(n);
    }
    if let Some(class) = class {
        w.witness(class);
    }
    w.all
}

impl Writer<'_> {
    fn add(
        &mut self,
        id: &'static str,
        at: FieldPath,
        values: Vec<Named>,
        result: Named,
        sources: &[Source],
    ) {
        let mut texts: Vec<SourceText> = Vec::new();
        for source in sources {
            if !texts.iter().any(|t| t.0 == *source) {
                texts.push(SourceText(*source));
            }
        }
        let comes = |v: &Named| {
            // A time is given in one step and worked out in another.
            let found = |w: &Working| w.result.name == v.name && (v.name != "time" || w.at == at);
            if self.all.iter().any(found) {
                return Whence::Worked;
            }
            whence(self.plan, self.rulings, id, v.name, &at)
        };
        let all_whence: Vec<Whence> = values.iter().map(comes).collect();
        for whence in &all_whence {
            if let Whence::From(Origin::Catalogue(source)) = whence
                && !texts.iter().any(|t| t.0 == *source)
            {
                texts.push(SourceText(*source));
            }
        }
        self.all.push(Working {
            id,
            at,
            values,
            whence: all_whence,
            result,
            sources: texts,
        });
    }

    fn get<Q: Quantity>(&self, id: InputId) -> Q {
        self.inputs.get(id)
    }

    /// The source of an input that is the catalogue's; nothing for the person's own.
    fn source(&self, id: Option<InputId>) -> Vec<Source> {
        match id.map(|id| self.plan.inputs.origin(id)) {
            Some(Origin::Catalogue(source)) => vec![source],
            _ => Vec::new(),
        }
    }

    /// What calipers read on a class's witness wire at the end, by areas as they are at the start.
    fn witness(&mut self, class: &crate::job::Class) {
        let Some(reads) = crate::class::read(self.plan, self.run, class) else {
            return;
        };
        let Some(mean) = self
            .run
            .pieces
            .iter()
            .find_map(|p| p.mean)
            .filter(|_| !self.plan.growth)
        else {
            return;
        };
        // The layer of the first piece is that of every piece that hangs all the time; where it does not, nothing is shown.
        let d = class.witness.unwrap_or(crate::class::WITNESS);
        if crate::class::witness(d, mean, false) == reads {
            let values = vec![Named::new("witness_d", d), Named::new("mean", mean)];
            let at = FieldPath::new("class");
            self.add("witness", at, values, Named::new("witness", reads), &[]);
        }
    }

    fn fit(&mut self, n: usize) {
        let piece = &self.plan.pieces[n];
        let at = FieldPath::new("pieces").child(&piece.id);
        let run = self.run.pieces[n];
        // What was there before counts too.
        let Some(mean) = run.mean.map(|m| m + piece.grown) else {
            return;
        };
        if let (Some(bore), Some(after)) = (piece.bore, run.bore_after) {
            let values = vec![
                Named::new("bore", self.get::<Length>(bore)),
                Named::new("mean", mean),
            ];
            self.add(
                "bore_after",
                at.clone(),
                values,
                Named::new("bore_after", after),
                &[],
            );
        }
        if let (Some(wanted), Some(make)) = (piece.wanted_bore, run.bore_to_make) {
            let values = vec![Named::new("wanted_bore", wanted), Named::new("mean", mean)];
            self.add(
                "bore_to_make",
                at,
                values,
                Named::new("bore_to_make", make),
                &[],
            );
        }
    }
}
