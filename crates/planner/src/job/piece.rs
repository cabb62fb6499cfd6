//! The pieces: what each is, how big, of what, and how it hangs.

use super::tree::{Node, Problems, Tagged, id_of, tagged};
use crate::fields;
use crate::path::FieldPath;
use crate::problem::{Accepted, Problem, ProblemKind};
use crate::value::Named;
use field::Opening;
use geometry::{Contradiction, Limit, Shape};
use quantity::{
    Fraction, Length, Quantity, Ratio, Resistance, SheetResistance, Thickness, Time, WorkArea,
};
use serde::Serialize;
use serde_json::Value;

/// A piece, or several alike.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Piece {
    /// `p1`, `p2`, in order of making; never reused.
    pub id: String,
    /// The person's own name for it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// How many alike.
    #[serde(rename = "count")]
    pub count: u32,
    /// How much surface.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub extent: Option<Extent>,
    /// What it is made of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub base: Option<Base>,
    /// Layer already on it, the mean of all metals: an area that grows is counted from there, and so is a bore.
    #[serde(rename = "grown_m", skip_serializing_if = "Option::is_none")]
    pub grown: Option<Thickness>,
    /// Open share of a masked sheet.
    #[serde(rename = "open_frac", skip_serializing_if = "Option::is_none")]
    pub open: Option<Fraction>,
    /// What it hangs on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hanger: Option<Hanger>,
    /// How well it is connected.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub contact: Option<Contact>,
    /// Which way a hollow looks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opening: Option<Opening>,
    /// Thinnest over mean, the person's own.
    #[serde(
        rename = "min_over_mean_ratio",
        skip_serializing_if = "Option::is_none"
    )]
    pub min_over_mean: Option<Ratio>,
    /// A bore that must fit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fit: Option<Fit>,
    /// What is etched.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub artwork: Option<Artwork>,
    /// When it is hung.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joins: Option<Moment>,
    /// When it is taken out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leaves: Option<Moment>,
}

/// How much surface a piece has.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Extent {
    /// The sum of shapes.
    Parts(Vec<Part>),
    /// Measured as an area.
    Area(Area),
}

/// One shape of a piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Part {
    /// Its id within the piece.
    pub id: String,
    /// Its shape and sizes.
    pub shape: Shape,
    /// Real over smooth surface outside.
    #[serde(
        rename = "texture_outside_ratio",
        skip_serializing_if = "Option::is_none"
    )]
    pub texture_outside: Option<Ratio>,
    /// How often it stands on the piece.
    #[serde(rename = "times_count")]
    pub times: u32,
    /// Where it stands.
    #[serde(skip_serializing_if = "Faces::is_open")]
    pub faces: Faces,
}

/// Where a part of a piece stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Faces {
    /// In the open.
    #[default]
    Open,
    /// In a hollow of the piece: all of it counts as inside.
    Recess,
}

impl Faces {
    fn is_open(&self) -> bool {
        *self == Self::Open
    }
}

/// An area measured as such.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Area {
    /// One side.
    #[serde(rename = "one_side_m2")]
    pub one_side: WorkArea,
    /// Wetted sides.
    #[serde(rename = "sides_count")]
    pub sides: u32,
    /// Real over smooth surface.
    #[serde(rename = "texture_ratio", skip_serializing_if = "Option::is_none")]
    pub texture: Option<Ratio>,
    /// How it was measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<Method>,
}

/// How an area was measured; each has its usual spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Method {
    /// A mesh file's own area.
    Mesh,
    /// A photo beside something of known size.
    Photo,
    /// A tracing cut out and weighed.
    Tracing,
    /// Foil wrapped and weighed.
    Foil,
    /// Worked out from sizes.
    Sizes,
    /// Judged by eye.
    Eye,
}

/// What a piece is made of.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Base {
    /// Sealed and coated.
    Nonconductor(Coated),
    /// Metal.
    Metal(Stock),
    /// Not known.
    Unknown,
}

/// A conductive coat on something that does not conduct.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Coated {
    /// The coat.
    pub coat: Coat,
    /// Its sheet resistance.
    #[serde(rename = "sheet_ohm_sq", skip_serializing_if = "Option::is_none")]
    pub sheet: Option<SheetResistance>,
    /// Contacts on it.
    #[serde(rename = "contacts_count")]
    pub contacts: u32,
    /// Its girth.
    #[serde(rename = "girth_m", skip_serializing_if = "Option::is_none")]
    pub girth: Option<Length>,
    /// Its height.
    #[serde(rename = "height_m", skip_serializing_if = "Option::is_none")]
    pub height: Option<Length>,
}

/// Kinds of conductive coat.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Coat {
    /// Graphite or carbon paint.
    Graphite,
    /// Copper paint.
    Copper,
    /// Silver paint.
    Silver,
    /// Another.
    Other,
}

/// Metal of a known kind.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Stock {
    /// Its id in the catalogue or in the Job's own metals.
    pub id: String,
    /// Thickness of sheet or wall.
    #[serde(rename = "thickness_m", skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Length>,
}

/// The wire a piece hangs on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Hanger {
    /// Diameter.
    #[serde(rename = "wire_d_m")]
    pub wire_d: Length,
    /// Wetted length.
    #[serde(rename = "wet_m")]
    pub wet: Length,
    /// Wires of one piece.
    #[serde(rename = "wires_count")]
    pub wires: u32,
}

/// How well a piece is connected.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Contact {
    /// At the touching point.
    #[serde(rename = "contact_ohm", skip_serializing_if = "Option::is_none")]
    pub contact: Option<Resistance>,
    /// Along the lead.
    #[serde(rename = "lead_ohm", skip_serializing_if = "Option::is_none")]
    pub lead: Option<Resistance>,
    /// Name of the clip it hangs on: pieces on one clip share its contact, each behind its own lead.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clip: Option<String>,
}

/// A bore that must fit after growth.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fit {
    /// Now.
    #[serde(rename = "bore_m", skip_serializing_if = "Option::is_none")]
    pub bore: Option<Length>,
    /// Wanted after growth.
    #[serde(rename = "wanted_bore_m", skip_serializing_if = "Option::is_none")]
    pub wanted: Option<Length>,
}

/// What is etched into a sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Artwork {
    /// Width of an opening.
    #[serde(rename = "opening_m", skip_serializing_if = "Option::is_none")]
    pub opening: Option<Length>,
    /// Width of metal to be left.
    #[serde(rename = "land_wanted_m", skip_serializing_if = "Option::is_none")]
    pub land_wanted: Option<Length>,
    /// Length of line.
    #[serde(rename = "length_m", skip_serializing_if = "Option::is_none")]
    pub length: Option<Length>,
    /// Depth over undercut.
    #[serde(rename = "etch_factor_ratio", skip_serializing_if = "Option::is_none")]
    pub etch_factor: Option<Ratio>,
    /// From which sides.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sides: Option<Sides>,
    /// As a flat floor or as a groove.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub model: Option<Model>,
    /// What protects the rest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resist: Option<Resist>,
    /// Which lead is on the sheet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead: Option<Lead>,
}

/// Sides an etch works from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Sides {
    /// One.
    One,
    /// Both.
    Both,
}

/// How depth is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Model {
    /// A flat floor.
    Flat,
    /// A fine line's groove.
    Groove,
}

/// Films against the etch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Resist {
    /// Transferred toner.
    Toner,
    /// Paint pen.
    Pen,
    /// Varnish.
    Varnish,
    /// Dry film.
    DryFilm,
    /// Vinyl.
    Vinyl,
}

/// The supply's leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Lead {
    /// Positive.
    Plus,
    /// Negative.
    Minus,
}

/// A moment within the steps.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Moment {
    /// The step.
    pub step: String,
    /// After its start.
    #[serde(rename = "after_s")]
    pub after: Time,
}

/// All pieces of a Job.
pub fn read_all(items: &[Value], path: &FieldPath, problems: &mut Problems) -> Vec<Piece> {
    let mut ids = Vec::new();
    let mut pieces = Vec::new();
    for item in items {
        if let Some(id) = id_of(item, path, &ids, problems) {
            ids.push(id.clone());
            if let Some(node) = Node::new(item, path.child(&id), problems) {
                pieces.extend(read(id, node, problems));
            }
        }
    }
    pieces
}

/// A piece whose count cannot be read is left out: everything shared with it would be wrong.
fn read(id: String, mut node: Node<'_>, problems: &mut Problems) -> Option<Piece> {
    node.get("id");
    let count = node.count(&fields::COUNT, 1, problems);
    let piece = Piece {
        id,
        label: node.text("label", problems).unwrap_or_default(),
        count: count.unwrap_or(1),
        extent: node
            .group("extent", problems)
            .and_then(|n| extent(n, problems)),
        base: base(&mut node, problems),
        grown: node.number(&fields::GROWN, problems),
        open: node.number(&fields::OPEN, problems),
        hanger: node
            .group("hanger", problems)
            .and_then(|n| hanger(n, problems)),
        contact: node.group("contact", problems).map(|mut n| {
            let contact = Contact {
                contact: n.number(&fields::CONTACT, problems),
                lead: n.number(&fields::LEAD, problems),
                clip: n.text("clip", problems),
            };
            n.finish(problems);
            contact
        }),
        opening: node.word(
            "opening",
            &[("to", Opening::To), ("away", Opening::Away)],
            problems,
        ),
        min_over_mean: node.number(&fields::MIN_OVER_MEAN, problems),
        fit: node.group("fit", problems).map(|mut n| {
            let fit = Fit {
                bore: n.number(&fields::FIT_BORE, problems),
                wanted: n.number(&fields::WANTED_BORE, problems),
            };
            n.finish(problems);
            fit
        }),
        artwork: node
            .group("artwork", problems)
            .map(|n| artwork(n, problems)),
        joins: node
            .group("joins", problems)
            .and_then(|n| moment(n, problems)),
        leaves: node
            .group("leaves", problems)
            .and_then(|n| moment(n, problems)),
    };
    node.finish(problems);
    count.map(|_| piece)
}

fn extent(mut node: Node<'_>, problems: &mut Problems) -> Option<Extent> {
    let path = node.path.clone();
    let (key, value) = node.choice(&["parts", "area"], problems)?;
    node.finish(problems);
    let path = path.child(key);
    if key == "area" {
        return area(Node::new(value, path, problems)?, problems).map(Extent::Area);
    }
    let items = value.as_array().map(Vec::as_slice).unwrap_or_default();
    if items.is_empty() {
        problems.push(Problem::at(path, ProblemKind::Missing));
        return None;
    }
    let mut ids = Vec::new();
    let mut parts = Vec::new();
    for item in items {
        let id = id_of(item, &path, &ids, problems)?;
        ids.push(id.clone());
        let node = Node::new(item, path.child(&id), problems)?;
        parts.push(part(id, node, problems));
    }
    // One unreadable part makes the sum unknown: a smaller area would burn the piece.
    parts
        .into_iter()
        .collect::<Option<Vec<_>>>()
        .map(Extent::Parts)
}

fn part(id: String, mut node: Node<'_>, problems: &mut Problems) -> Option<Part> {
    node.get("id");
    let shape = match node.group("shape", problems) {
        Some(n) => shape(n, problems),
        None => {
            if !node.has("shape") {
                problems.push(
                    Problem::at(node.path.child("shape"), ProblemKind::Missing)
                        .one_of(SHAPES.iter().copied()),
                );
            }
            None
        }
    };
    let texture_outside = node.number(&fields::TEXTURE_OUTSIDE, problems);
    let times = node.count(&fields::TIMES, 1, problems);
    let faces = node.word(
        "faces",
        &[("open", Faces::Open), ("recess", Faces::Recess)],
        problems,
    );
    node.finish(problems);
    Some(Part {
        id,
        shape: shape?,
        texture_outside,
        times: times?,
        faces: faces.unwrap_or_default(),
    })
}

/// Ids of the shapes a Job may hold.
pub const SHAPES: &[&str] = Shape::IDS;

/// Every size must be there; a word or count left out takes its usual value.
fn shape(mut node: Node<'_>, problems: &mut Problems) -> Option<Shape> {
    let path = node.path.clone();
    let (key, value) = node.choice(SHAPES, problems)?;
    node.finish(problems);
    let usual = Shape::of_id(key)?;
    let mut node = Node::new(value, path.child(key), problems)?;
    let mut whole = true;
    let mut shape = usual.map_sizes(|n, usual_size| {
        let read = fields::shape_size(usual.size_names()[n])
            .and_then(|field| node.needed(field, problems));
        whole &= read.is_some();
        read.unwrap_or(usual_size)
    });
    if let Some((key, words)) = shape.word() {
        let given = node.has(key);
        let text = node.text(key, problems);
        let worded = text.as_deref().map(|word| shape.with_word(word));
        match (worded, text) {
            (Some(Some(worded)), _) => shape = worded,
            (Some(None), Some(text)) => {
                problems.push(
                    Problem::at(node.path.child(key), ProblemKind::UnknownWord)
                        .reading(text)
                        .one_of(words.iter().copied()),
                );
                whole = false;
            }
            _ => whole &= !given,
        }
    }
    if let Some(field) = shape.count_key().and_then(fields::shape_count) {
        match node.count(field, 1, problems) {
            Some(count) => shape = shape.with_count(count),
            None => whole = false,
        }
    }
    let at = node.path.clone();
    node.finish(problems);
    if !whole {
        return None;
    }
    match shape.contradiction() {
        Some(wrong) => {
            problems.push(contradicts(&shape, wrong, &at));
            None
        }
        None => Some(shape),
    }
}

/// Two sizes that cannot go together, said at the one to blame.
fn contradicts(shape: &Shape, wrong: Contradiction, at: &FieldPath) -> Problem {
    let name = shape.size_names()[wrong.size];
    let mut read = Length::from_si(0.0);
    shape.map_sizes(|n, size| {
        if n == wrong.size {
            read = size;
        }
        size
    });
    let problem =
        Problem::at(at.child(name), ProblemKind::Contradiction).reading(read.si().to_string());
    match fields::shape_size(name) {
        Some(field) => {
            let (least, most) = match wrong.limit {
                Limit::Least(least) => (least, field.most),
                Limit::Most(most) => (field.least, most),
            };
            problem.accepting(Accepted::Between {
                least: Named::new("least", least),
                most: Named::new("most", most),
            })
        }
        None => problem,
    }
}

/// The words for how an area was measured.
pub const METHODS: [(&str, Method); 6] = [
    ("mesh", Method::Mesh),
    ("photo", Method::Photo),
    ("tracing", Method::Tracing),
    ("foil", Method::Foil),
    ("sizes", Method::Sizes),
    ("eye", Method::Eye),
];

fn area(mut node: Node<'_>, problems: &mut Problems) -> Option<Area> {
    let one_side = node.needed(&fields::ONE_SIDE, problems);
    let sides = node.count(&fields::SIDES, 1, problems);
    let texture = node.number(&fields::TEXTURE, problems);
    let method = node.word("method", &METHODS, problems);
    node.finish(problems);
    Some(Area {
        one_side: one_side?,
        sides: sides?,
        texture,
        method,
    })
}

fn base(node: &mut Node<'_>, problems: &mut Problems) -> Option<Base> {
    let at = node.path.child("base");
    let value = node.get("base")?;
    match tagged(
        value,
        &at,
        &["unknown"],
        &["nonconductor", "metal"],
        problems,
    )? {
        Tagged::Word(_) => Some(Base::Unknown),
        Tagged::Group("metal", value, path) => {
            let mut n = Node::new(value, path, problems)?;
            let id = n.needed_text("id", problems);
            let thickness = n.number(&fields::STOCK, problems);
            n.finish(problems);
            id.map(|id| Base::Metal(Stock { id, thickness }))
        }
        Tagged::Group(_, value, path) => {
            let mut n = Node::new(value, path, problems)?;
            let coat = n.word(
                "coat",
                &[
                    ("graphite", Coat::Graphite),
                    ("copper", Coat::Copper),
                    ("silver", Coat::Silver),
                    ("other", Coat::Other),
                ],
                problems,
            );
            let coated = Coated {
                coat: coat.unwrap_or(Coat::Other),
                sheet: n.number(&fields::SHEET, problems),
                contacts: n.count(&fields::CONTACTS, 1, problems).unwrap_or(1),
                girth: n.number(&fields::GIRTH, problems),
                height: n.number(&fields::COAT_HEIGHT, problems),
            };
            n.finish(problems);
            Some(Base::Nonconductor(coated))
        }
    }
}

fn hanger(mut node: Node<'_>, problems: &mut Problems) -> Option<Hanger> {
    let wire_d = node.needed(&fields::HANGER_WIRE, problems);
    let wet = node.needed(&fields::HANGER_WET, problems);
    let wires = node.count(&fields::WIRES, 1, problems);
    node.finish(problems);
    Some(Hanger {
        wire_d: wire_d?,
        wet: wet?,
        wires: wires?,
    })
}

fn artwork(mut node: Node<'_>, problems: &mut Problems) -> Artwork {
    let artwork = Artwork {
        opening: node.number(&fields::ART_OPENING, problems),
        land_wanted: node.number(&fields::ART_LAND, problems),
        length: node.number(&fields::ART_LENGTH, problems),
        etch_factor: node.number(&fields::ETCH_FACTOR, problems),
        sides: node.word(
            "sides",
            &[("one", Sides::One), ("both", Sides::Both)],
            problems,
        ),
        model: node.word(
            "model",
            &[("flat", Model::Flat), ("groove", Model::Groove)],
            problems,
        ),
        resist: node.word(
            "resist",
            &[
                ("toner", Resist::Toner),
                ("pen", Resist::Pen),
                ("varnish", Resist::Varnish),
                ("dry_film", Resist::DryFilm),
                ("vinyl", Resist::Vinyl),
            ],
            problems,
        ),
        lead: node.word(
            "lead",
            &[("plus", Lead::Plus), ("minus", Lead::Minus)],
            problems,
        ),
    };
    node.finish(problems);
    artwork
}

fn moment(mut node: Node<'_>, problems: &mut Problems) -> Option<Moment> {
    let step = node.needed_text("step", problems);
    let after = node.needed(&fields::AFTER, problems);
    node.finish(problems);
    Some(Moment {
        step: step?,
        after: after?,
    })
}
