//! How the answer was worked out, step by step, from the likely values.

mod bench_side;

use crate::advise::{diffusivity, limiting, metal_content};
use crate::answer::{Origin, Ruling, SourceText, Whence, Working};
use crate::body::scale;
use crate::even::{efficiency, min_ratio, reach, spread_on};
use crate::expr::Expr::{self, Add, Div, Mul, Number, Pi, Pow, Sqrt, Sub, Value};
use crate::groove;
use crate::inputs::{InputId, Inputs};
use crate::path::FieldPath;
use crate::plan::{Plan, PlanBath, PlanPiece, PlanSurface, PlanUntil};
use crate::run::Run;
use crate::value::Named;
use crate::whence::whence;
use chemistry::element::element_of;
use chemistry::faraday::FARADAY;
use chemistry::limiting::diffusion_layer;
use chemistry::source::{MethodId, Source, WorkId};
use geometry::shape::wire_side;
use quantity::{AnyQuantity, Charge, Fraction, Length, Quantity, Ratio, Thickness, Time, WorkArea};

/// Every formula of the working, by id.
pub const FORMULAS: &[(&str, Expr)] = &[
    (
        "equivalent",
        Div(
            &Value("molar_mass"),
            &Mul(&Value("valence"), &Value("faraday")),
        ),
    ),
    // pi^2 (bore + wire) wire
    (
        "area_torus",
        Mul(
            &Pow(&Pi, &Number(2.0)),
            &Mul(&Add(&Value("bore"), &Value("wire_d")), &Value("wire_d")),
        ),
    ),
    // 2 pi (bore + wall) (width + wall): outside pi (bore + 2 wall) width, inside pi bore width, two flat rings
    (
        "area_band",
        Mul(
            &Mul(&Number(2.0), &Pi),
            &Mul(
                &Add(&Value("bore"), &Value("wall")),
                &Add(&Value("width"), &Value("wall")),
            ),
        ),
    ),
    (
        "wire_area",
        Mul(
            &Mul(&Pi, &Value("wire_d")),
            &Mul(&Value("wet"), &Value("wires")),
        ),
    ),
    (
        "wetted",
        Mul(
            &Add(&Value("piece_area"), &Value("wire_area")),
            &Value("count"),
        ),
    ),
    ("wanted", Mul(&Value("density"), &Value("wetted"))),
    // By area, where contacts are not counted.
    (
        "share",
        Div(
            &Add(&Value("piece_area"), &Value("wire_area")),
            &Value("wetted"),
        ),
    ),
    // Resistance of a piece's branch: contact, lead, its surface and the solution in front of it. Shares go as 1 over it.
    (
        "branch",
        Add(
            &Add(&Value("contact"), &Value("lead")),
            &Div(
                &Add(
                    &Div(&Value("slope"), &Value("density")),
                    &Div(&Value("distance"), &Value("conductivity")),
                ),
                &Add(&Value("piece_area"), &Value("wire_area")),
            ),
        ),
    ),
    // d (d + 4 T), its root: a wire's metal is pi/4 (d1^2 - d^2) a length, that of the charge pi d T.
    (
        "witness",
        Sqrt(&Mul(
            &Value("witness_d"),
            &Add(&Value("witness_d"), &Mul(&Number(4.0), &Value("mean"))),
        )),
    ),
    // As a wire of a gauge, the surface by which the work is too small for the supply's lowest current.
    (
        "thief",
        Div(
            &Mul(
                &Value("wetted"),
                &Sub(&Div(&Value("lowest"), &Value("wanted")), &Number(1.0)),
            ),
            &Mul(&Pi, &Value("gauge")),
        ),
    ),
    (
        "growth",
        Div(
            &Mul(
                &Mul(&Value("equivalent"), &Value("efficiency")),
                &Div(&Value("flows"), &Value("wetted")),
            ),
            &Value("metal_density"),
        ),
    ),
    (
        "time",
        Div(&Sub(&Value("target"), &Value("reached")), &Value("growth")),
    ),
    (
        "mean",
        Add(&Value("reached"), &Mul(&Value("growth"), &Value("time"))),
    ),
    ("charge", Mul(&Value("flows"), &Value("time"))),
    (
        "mass",
        Mul(
            &Mul(&Value("equivalent"), &Value("efficiency")),
            &Mul(
                &Value("charge"),
                &Div(&Value("piece_area"), &Value("wetted")),
            ),
        ),
    ),
    (
        "wagner",
        Div(
            &Mul(
                &Mul(&Value("conductivity"), &Value("evenness_factor")),
                &Div(&Value("slope"), &Value("density")),
            ),
            &Value("scale"),
        ),
    ),
    ("thinnest", Mul(&Value("grown"), &Value("min_over_mean"))),
    (
        "limiting",
        Div(
            &Mul(
                &Mul(&Value("valence"), &Value("faraday")),
                &Mul(&Value("diffusivity"), &Value("metal_content")),
            ),
            &Mul(&Value("molar_mass"), &Value("layer")),
        ),
    ),
    (
        "volts",
        Add(
            &Div(
                &Mul(&Value("density"), &Value("distance")),
                &Value("conductivity"),
            ),
            &Value("surface_volts"),
        ),
    ),
    // d (1 + (pi / 2) d / (EF w))
    (
        "flat_for_groove",
        Mul(
            &Value("depth"),
            &Add(
                &Number(1.0),
                &Div(
                    &Mul(&Div(&Pi, &Number(2.0)), &Value("depth")),
                    &Mul(&Value("etch_factor"), &Value("opening")),
                ),
            ),
        ),
    ),
    (
        "stalls",
        Div(
            &Value("bare_volts"),
            &Add(
                &Value("front"),
                &Div(&Value("bare_volts"), &Value("limiting")),
            ),
        ),
    ),
    (
        "bites",
        Div(
            &Mul(
                &Value("flows"),
                &Sub(&Value("ceiling"), &Value("surface_volts")),
            ),
            &Sub(&Value("volts"), &Value("surface_volts")),
        ),
    ),
    // (P / U) (1 - e^(-t / tau))
    (
        "warms",
        Mul(
            &Div(&Value("power"), &Value("heat_loss")),
            &Sub(
                &Number(1.0),
                &Pow(
                    &Number(core::f64::consts::E),
                    &Sub(&Number(0.0), &Div(&Value("time"), &Value("tau"))),
                ),
            ),
        ),
    ),
    (
        "bore_after",
        Sub(&Value("bore"), &Mul(&Number(2.0), &Value("mean"))),
    ),
    (
        "bore_to_make",
        Add(&Value("wanted_bore"), &Mul(&Number(2.0), &Value("mean"))),
    ),
];

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

    fn areas(&mut self, n: usize) {
        let piece = &self.plan.pieces[n];
        let at = FieldPath::new("pieces").child(&piece.id);
        let mensuration = Source::Published {
            work: WorkId::Mensuration,
            locator: "Pappus's theorem; cylinders and annuli",
        };
        if let Some(PlanSurface::Parts(parts)) = &piece.surface {
            for part in parts {
                let id = match part.shape.id() {
                    "torus" => "area_torus",
                    "band" => "area_band",
                    _ => continue,
                };
                let values = part
                    .shape
                    .size_names()
                    .iter()
                    .zip(&part.sizes)
                    .map(|(name, size)| Named::new(name, self.get::<Length>(*size)))
                    .collect();
                let result = Named::new("smooth_area", part.shape.surface().total());
                self.add(id, part.at.clone(), values, result, &[mensuration]);
            }
        }
        if let Some((d, wet, wires)) = piece.wires {
            let (d, wet): (Length, Length) = (self.get(d), self.get(wet));
            let values = vec![
                Named::new("wire_d", d),
                Named::new("wet", wet),
                count("wires", f64::from(wires)),
            ];
            let result = Named::new("wire_area", wire_side(d, wet) * f64::from(wires));
            self.add("wire_area", at.child("hanger"), values, result, &[]);
        }
        if let Some(area) = self.run.pieces[n].area {
            let wire = self.run.pieces[n].wire_area;
            let all = f64::from(piece.count);
            self.add(
                "wetted",
                at,
                vec![
                    Named::new("piece_area", area),
                    Named::new("wire_area", wire),
                    count("count", all),
                ],
                Named::new("wetted", (area + wire) * all),
                &[],
            );
        }
    }

    /// What a charge moves, and how fast ions arrive, in the bath of a step: at the bath's last step.
    fn equivalent(&mut self, bath: &PlanBath, n: usize, last: usize) {
        let at = FieldPath::new("baths").child(&bath.id);
        // An alloy's is a sum over its parts, each with its own valence: its result stands in the growth.
        if let Some(moved) = self.plan.first_moved(&self.plan.steps[n])
            && let Some(element) = element_of(&moved.id)
            && let [(only, _)] = moved.parts()
            && *only == element.id
        {
            // As it was counted with: the solution's, or what the person's own label says.
            let per_mole = element.molar_mass.value.si() / FARADAY.value.si();
            let valence = (per_mole / moved.equivalent.si()).round();
            let result = Named::new("equivalent", moved.equivalent);
            self.add(
                "equivalent",
                at.clone(),
                vec![
                    Named::new("molar_mass", element.molar_mass.value),
                    count("valence", valence),
                    Named::new("faraday", FARADAY.value),
                ],
                result,
                &[element.molar_mass.source, FARADAY.source],
            );
        }
        let Some(element) = element_of(bath.solution.metal).filter(|_| !bath.etches()) else {
            return;
        };
        let step = &self.plan.steps[last];
        if let (Some(c), Some(d), Some(limit)) = (
            metal_content(bath),
            diffusivity(bath, step),
            limiting(bath, step),
        ) {
            let said = bath
                .metals
                .iter()
                .any(|m| m.metal == bath.solution.metal && m.now.is_some());
            let content = bath.solution.metal_content.source().filter(|_| !said);
            let spreads = bath.solution.diffusivity;
            let layer = diffusion_layer(step.stirring);
            let sources: Vec<Source> = [content, spreads.source(), Some(layer.source)]
                .into_iter()
                .flatten()
                .collect();
            self.add(
                "limiting",
                at,
                vec![
                    count("valence", f64::from(bath.solution.valence)),
                    Named::new("faraday", FARADAY.value),
                    Named::new("diffusivity", d),
                    Named::new("metal_content", c),
                    Named::new("molar_mass", element.molar_mass.value),
                    Named::new("layer", layer.value),
                ],
                Named::new("limiting", limit),
                &sources,
            );
        }
    }

    fn step(&mut self, n: usize, bath: &PlanBath) {
        let step = &self.plan.steps[n];
        let at = FieldPath::new("steps").child(&step.id);
        let run = self.run.steps[n];
        // Of the layer, which another step of the same metal may have begun.
        let reached = match n.checked_sub(1) {
            Some(p) if self.plan.steps[p].layer == step.layer => self.run.steps[p].mean_after,
            _ => Some(Thickness::um(0.0)),
        };
        let (Some(flows), Some(i), Some(wanted)) = (run.real, run.density, run.wanted) else {
            return;
        };
        let Some(wetted) = self.wetted(n) else { return };
        if let Some(crate::plan::PlanDrive::Density(density)) = step.drive {
            self.add(
                "wanted",
                at.clone(),
                vec![Named::new("density", density), Named::new("wetted", wetted)],
                Named::new("wanted", wanted),
                &self.typical_source(n, bath),
            );
        }
        self.bar(n, bath, wanted, wetted, &at);
        let (Some(growth), Some(moved), Some(efficiency)) = (
            run.growth,
            self.plan.first_moved(step),
            efficiency(bath, self.inputs, i),
        ) else {
            return;
        };
        if self.plan.contacts {
            return;
        }
        // One density that stays: else the step is a sum of stages, or the areas grow, and has no one line.
        let plain = self.plain(n);
        let mut sources = self.source(bath.efficiency);
        sources.extend(density_source(&moved.id));
        let values = vec![
            Named::new("equivalent", moved.equivalent),
            Named::new("efficiency", efficiency),
            Named::new("flows", flows),
            Named::new("wetted", wetted),
            Named::new("metal_density", moved.density),
        ];
        self.add(
            "growth",
            at.clone(),
            values,
            Named::new("growth", growth),
            &sources,
        );
        if let (Some(time), Some(reached), Some(after)) = (run.time, reached, run.mean_after)
            && plain
        {
            self.time_and_mean(n, &at, growth, time, reached, after);
            if let Some(charge) = run.charge {
                let values = vec![Named::new("flows", flows), Named::new("time", time)];
                self.add(
                    "charge",
                    at.clone(),
                    values,
                    Named::new("charge", charge),
                    &[],
                );
                for p in self.hung(n) {
                    self.mass(p, &at, n, efficiency, charge, wetted);
                }
            }
            for p in self.hung(n) {
                self.evenness(p, &at, bath, n, i, growth * time);
            }
        }
        self.volts(&at, bath, i, n);
        self.stalls(n, &at, bath);
        self.bites(n, &at, bath);
        self.warms(n, &at, bath);
    }

    /// How unlike pieces share the current of a step's first stage, in its one vessel; the thief that a supply asks for.
    fn bar(
        &mut self,
        n: usize,
        bath: &PlanBath,
        wanted: quantity::Current,
        wetted: WorkArea,
        at: &FieldPath,
    ) {
        let lowest = self.plan.bench.as_ref().and_then(|b| b.lowest);
        if let Some(lowest) = lowest.filter(|l| l.si() > wanted.si() && !bath.etches()) {
            let gauge = crate::ways::GAUGE;
            let more = wetted * (lowest / wanted - 1.0);
            let length = more.si() / (core::f64::consts::PI * gauge.si());
            let values = vec![
                Named::new("wetted", wetted),
                Named::new("lowest", lowest),
                Named::new("wanted", wanted),
                Named::new("gauge", gauge),
            ];
            let result = Named::new("thief", Length::from_si(length));
            self.add("thief", at.clone(), values, result, &[]);
        }
        let first = self.plan.first_stage(n);
        let ([hung], Some(k)) = (first.map_or(&[][..], |k| &self.plan.stages[k].hung), first)
        else {
            return;
        };
        // Areas as they are at the job's start.
        if hung.len() < 2 || n > 0 {
            return;
        }
        for p in hung.clone() {
            let (piece, run) = (&self.plan.pieces[p], &self.run.pieces[p]);
            let Some(area) = run.area else { continue };
            let at = FieldPath::new("pieces").child(&piece.id);
            let mut values = vec![
                Named::new("piece_area", area),
                Named::new("wire_area", run.wire_area),
            ];
            if !self.plan.contacts {
                let share = self.run.shared[k * self.plan.pieces.len() + p].share;
                values.push(Named::new("wetted", wetted));
                if let Some(share) = share {
                    self.add("share", at, values, Named::new("share", share), &[]);
                }
                continue;
            }
            let ohm = |id: Option<InputId>| {
                id.map_or(quantity::Resistance::of_si(0.0), |id| self.inputs.get(id))
            };
            let (Some(kappa), Some(slope), Some(distance), None, Some(i)) = (
                bath.conductivity,
                bath.slope,
                bath.distance,
                piece.clip,
                self.run.steps[n].density,
            ) else {
                continue;
            };
            let (contact, lead) = (ohm(piece.contact[0]), ohm(piece.contact[1]));
            let kappa: quantity::Conductivity = self.get(kappa);
            let distance: Length = self.get(distance);
            let by_area = slope.value.si() / i.si() + distance.si() / kappa.si();
            let all = contact.si() + lead.si() + by_area / (area + run.wire_area).si();
            values.extend([
                Named::new("contact", contact),
                Named::new("lead", lead),
                Named::new("slope", slope.value),
                Named::new("density", i),
                Named::new("distance", distance),
                Named::new("conductivity", kappa),
            ]);
            let result = Named::new("branch", quantity::Resistance::from_si(all));
            self.add("branch", at, values, result, &[]);
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

    /// What hangs in a step's one vessel.
    fn hung(&self, n: usize) -> Vec<usize> {
        match &self.plan.steps[n].vessels[..] {
            [only] => only.pieces.clone(),
            _ => Vec::new(),
        }
    }

    /// Whether a step is one stage in one vessel with areas that stay.
    fn plain(&self, n: usize) -> bool {
        let stages = self.plan.stages.iter().filter(|s| s.step == n);
        let filling = crate::cover::passes(&self.plan.steps[n]) < 1.0;
        !filling
            && !self.plan.growth
            && stages.count() == 1
            && self.plan.steps[n].vessels.len() == 1
    }

    /// The wetted area that a step's current is for.
    fn wetted(&self, n: usize) -> Option<WorkArea> {
        self.run.stages[self.plan.first_stage(n)?].area
    }

    /// What one piece takes of a step's charge.
    fn mass(
        &mut self,
        p: usize,
        at: &FieldPath,
        n: usize,
        efficiency: Fraction,
        charge: Charge,
        wetted: WorkArea,
    ) {
        let Some(area) = self.run.pieces[p].area else {
            return;
        };
        let bath = self.plan.steps[n].vessels.first().map(|v| v.bath);
        let Some(metal) = bath.and_then(|b| self.plan.moved(p, b)) else {
            return;
        };
        let equivalent = metal.equivalent;
        let moved = chemistry::faraday::mass(equivalent, efficiency, charge);
        self.add(
            "mass",
            at.clone(),
            vec![
                Named::new("equivalent", equivalent),
                Named::new("efficiency", efficiency),
                Named::new("charge", charge),
                Named::new("piece_area", area),
                Named::new("wetted", wetted),
            ],
            Named::new("mass", moved * (area / wetted)),
            &[],
        );
    }

    fn typical_source(&self, n: usize, bath: &PlanBath) -> Vec<Source> {
        let typical = bath.solution.window_still.typical();
        match self.plan.steps[n].drive {
            Some(crate::plan::PlanDrive::Density(i)) if Some(i) == typical => {
                bath.solution.window_still.source().into_iter().collect()
            }
            _ => Vec::new(),
        }
    }

    fn time_and_mean(
        &mut self,
        n: usize,
        at: &FieldPath,
        growth: quantity::GrowthRate,
        time: Time,
        reached: Thickness,
        after: Thickness,
    ) {
        if let Some(target) = self.aim(n, at)
            && target.si() > reached.si()
        {
            let values = vec![
                Named::new("target", target),
                Named::new("reached", reached),
                Named::new("growth", growth),
            ];
            self.add("time", at.clone(), values, Named::new("time", time), &[]);
        }
        let values = vec![
            Named::new("reached", reached),
            Named::new("growth", growth),
            Named::new("time", time),
        ];
        self.add("mean", at.clone(), values, Named::new("mean", after), &[]);
    }

    /// The mean layer or flat floor a step aims at, where all pieces share one.
    fn aim(&mut self, n: usize, at: &FieldPath) -> Option<Thickness> {
        match self.plan.steps[n].until? {
            PlanUntil::Mean(target) => Some(target),
            PlanUntil::Depth(depth) if self.plan.pieces.len() == 1 => {
                let piece = &self.plan.pieces[0];
                let flat = groove::flat_for(piece, self.inputs, depth);
                if let Some(opening) = piece.art.opening.filter(|_| piece.art.groove) {
                    let values = vec![
                        Named::new("depth", depth),
                        Named::new(
                            "etch_factor",
                            Ratio::from_si(groove::etch_factor(piece, self.inputs)),
                        ),
                        Named::new("opening", opening),
                    ];
                    let derived = Source::Computed {
                        method: MethodId::Derived,
                    };
                    self.add(
                        "flat_for_groove",
                        at.clone(),
                        values,
                        Named::new("flat", flat),
                        &[derived],
                    );
                }
                Some(flat)
            }
            _ => None,
        }
    }

    fn evenness(
        &mut self,
        p: usize,
        at: &FieldPath,
        bath: &PlanBath,
        n: usize,
        i: quantity::CurrentDensity,
        grown: Thickness,
    ) {
        let piece: &PlanPiece = &self.plan.pieces[p];
        let row = self.plan.steps[n]
            .vessels
            .first()
            .and_then(|v| piece.rows[v.bath]);
        let even = scale(piece, self.inputs)
            .and_then(|size| spread_on(piece, row, size, reach(bath, self.inputs, i)));
        let (wa, table) = (even.map(|e| e.0), even.map(|e| e.1.min_over_mean));
        let fem = Source::Computed {
            method: MethodId::FiniteElements,
        };
        if let (Some(wa), Some(slope), Some(size), Some(k), Some(f)) = (
            wa,
            bath.slope,
            scale(piece, self.inputs),
            bath.conductivity,
            bath.evenness_factor,
        ) {
            let mut sources = self.source(bath.conductivity);
            sources.push(slope.source);
            sources.push(Source::Published {
                work: WorkId::EcsDistribution,
                locator: "Wagner number",
            });
            self.add(
                "wagner",
                at.clone(),
                vec![
                    Named::new("conductivity", self.get::<quantity::Conductivity>(k)),
                    Named::new("evenness_factor", self.get::<Ratio>(f)),
                    Named::new("slope", slope.value),
                    Named::new("density", i),
                    Named::new("scale", size),
                ],
                Named::new("wagner", wa),
                &sources,
            );
        }
        if let Some(ratio) = min_ratio(piece, bath, self.inputs, table) {
            let sources: &[Source] = if piece.own_ratio.is_some() {
                &[]
            } else {
                &[fem]
            };
            self.add(
                "thinnest",
                at.clone(),
                vec![
                    Named::new("grown", grown),
                    Named::new("min_over_mean", ratio),
                ],
                Named::new("thinnest", grown * ratio.si()),
                sources,
            );
        }
    }

    fn volts(&mut self, at: &FieldPath, bath: &PlanBath, i: quantity::CurrentDensity, n: usize) {
        if self.plan.contacts || self.plan.steps[n].vessels.len() != 1 {
            return;
        }
        let (Some(volts), Some(d), Some(k), Some(s)) = (
            self.run.steps[n].volts,
            bath.distance,
            bath.conductivity,
            bath.surface_volts,
        ) else {
            return;
        };
        let mut sources = self.source(bath.conductivity);
        sources.extend(self.source(bath.surface_volts));
        self.add(
            "volts",
            at.clone(),
            vec![
                Named::new("density", i),
                Named::new("distance", self.get::<Length>(d)),
                Named::new("conductivity", self.get::<quantity::Conductivity>(k)),
                Named::new("surface_volts", self.get::<quantity::Voltage>(s)),
            ],
            Named::new("volts", volts),
            &sources,
        );
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
