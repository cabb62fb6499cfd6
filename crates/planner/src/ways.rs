//! Ways out: for every Limit the changes that lift it, each planned again and with its own numbers. Likely values only.

use crate::advise::tree_density;
use crate::answer::{Limit, LimitKind};
use crate::answering::{cost, prepare};
use crate::checks;
use crate::job::step::STIRRINGS;
use crate::job::{Base, Drive, Form, Job, Resist, Sides, Supply, Until};
use crate::path::FieldPath;
use crate::plan::Plan;
use crate::run::{Run, run};
use chemistry::{Catalogue, Stirring};
use field::Arrangement;
use quantity::kinds::unsigned_zero;
use quantity::{
    AnyQuantity, Current, CurrentDensity, Length, Money, Power, Quantity, Ratio, Thickness, Time,
};
use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};

/// What is changed, in the order in which ways out are offered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// The piece is turned, or hung between two.
    Turn,
    /// The solution is stirred.
    Stir,
    /// Another current or density.
    Setting,
    /// Another contact.
    Contact,
    /// Thinner, shallower or at another time.
    Time,
    /// Nearer to the counter electrode, or farther.
    Distance,
    /// A larger counter electrode.
    Counter,
    /// More of the bath.
    Volume,
    /// Another film.
    Resist,
    /// Fewer at once.
    Batches,
    /// Several vessels one behind the other.
    Series,
    /// Another supply, a meter, a stronger heater.
    Supply,
}

impl Way {
    /// Every way, for tables that must be complete.
    pub const ALL: &'static [Way] = &[
        Self::Turn,
        Self::Stir,
        Self::Setting,
        Self::Contact,
        Self::Time,
        Self::Distance,
        Self::Counter,
        Self::Volume,
        Self::Resist,
        Self::Batches,
        Self::Series,
        Self::Supply,
    ];
}

/// The new value of an input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum To {
    /// A quantity.
    Quantity(AnyQuantity),
    /// One of a few words.
    Word(&'static str),
}

/// One input and what it becomes. In JSON `{"at": .., "to": ..}` or `{"at": .., "to_m": ..}`.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The input.
    pub at: FieldPath,
    /// What it becomes.
    pub to: To,
}

impl Serialize for Change {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let mut map = s.serialize_map(Some(2))?;
        map.serialize_entry("at", &self.at)?;
        match self.to {
            To::Word(word) => map.serialize_entry("to", word)?,
            To::Quantity(q) => {
                map.serialize_entry(&["to_", q.key_unit].concat(), &unsigned_zero(q.si))?;
            }
        }
        map.end()
    }
}

/// A change that lifts a Limit and brings no new one.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WayOut {
    /// The limit it lifts.
    pub lifts: LimitKind,
    /// Where that stands.
    pub at: FieldPath,
    /// What is changed.
    pub way: Way,
    /// The input and its new value.
    pub change: Change,
    /// What would then be set first.
    #[serde(rename = "set_A", skip_serializing_if = "Option::is_none")]
    pub set: Option<Current>,
    /// How long it would then take, all batches together.
    #[serde(rename = "time_s", skip_serializing_if = "Option::is_none")]
    pub time: Option<Time>,
    /// Mean thickness on the first piece; in an etch its depth.
    #[serde(rename = "thickness_m", skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Thickness>,
    /// What the metal would then cost, by the person's own prices.
    #[serde(rename = "cost_money", skip_serializing_if = "Option::is_none")]
    pub cost: Option<Money>,
    /// The whole job with the change.
    #[serde(skip)]
    pub job: Job,
}

/// A job planned and run with the likely values alone: quick enough to try many.
struct Tried {
    plan: Plan,
    likely: Run,
    limits: Vec<Limit>,
    sound: bool,
}

impl Tried {
    fn of(catalogue: &Catalogue, job: &Job) -> Self {
        let mut problems = Vec::new();
        let (plan, _) = prepare(catalogue, job, &mut problems);
        let mut likely = Run::for_plan(&plan);
        run(&plan, &plan.inputs.likely(), None, &mut likely);
        Self {
            limits: checks::limits(job, &plan, &likely),
            sound: problems.is_empty(),
            plan,
            likely,
        }
    }

    fn has(&self, limit: &Limit) -> bool {
        self.limits
            .iter()
            .any(|l| l.kind == limit.kind && l.at == limit.at)
    }
}

/// The ways out of every limit of a job, limit by limit in the Answer's order, within one the nearest at hand first: turn or
/// stir, setting, contact, time, distance, counter electrode and bath, batches or vessels in series, another supply. Only
/// those are given that lift the limit when planned again and bring no limit that was not there.
pub fn ways_out(catalogue: &Catalogue, job: &Job) -> Vec<WayOut> {
    let now = Tried::of(catalogue, job);
    let mut all = Vec::new();
    for limit in &now.limits {
        let mut search = Search {
            catalogue,
            job,
            now: &now,
            limit,
            found: Vec::new(),
        };
        search.candidates();
        search.found.sort_by_key(|w| w.way);
        all.append(&mut search.found);
    }
    all
}

struct Search<'a> {
    catalogue: &'a Catalogue,
    job: &'a Job,
    now: &'a Tried,
    limit: &'a Limit,
    found: Vec<WayOut>,
}

impl Search<'_> {
    /// Tries a change; keeps it where it lifts the limit and brings no other.
    fn attempt(&mut self, way: Way, at: FieldPath, to: To, change: impl FnOnce(&mut Job)) -> bool {
        self.attempt_batches(way, at, to, 1.0, change)
    }

    fn attempt_batches(
        &mut self,
        way: Way,
        at: FieldPath,
        to: To,
        batches: f64,
        change: impl FnOnce(&mut Job),
    ) -> bool {
        let mut job = self.job.clone();
        change(&mut job);
        let tried = Tried::of(self.catalogue, &job);
        let lifts = !tried.has(self.limit) && tried.likely.time.is_some();
        let new = |l: &Limit| !self.now.has(l);
        if !tried.sound || !lifts || tried.limits.iter().any(new) {
            return false;
        }
        let first = tried.likely.pieces.first();
        self.found.push(WayOut {
            lifts: self.limit.kind,
            at: self.limit.at.clone(),
            way,
            change: Change { at, to },
            set: tried.likely.steps.first().and_then(|s| s.set),
            time: tried.likely.time.map(|t| t * batches),
            thickness: first.and_then(|p| p.depth.or(p.mean)),
            cost: cost(&job, &tried.plan, &tried.likely).map(|c| Money::from_si(c.si() * batches)),
            job,
        });
        true
    }

    fn number<Q: Quantity>(&self, name: &str) -> Option<Q> {
        let named = self.limit.numbers.iter().find(|n| n.name == name)?;
        Some(Q::from_si(named.value.si))
    }

    /// The step the limit stands at, else the first.
    fn step(&self) -> usize {
        let at = |id: &str| FieldPath::new("steps").child(id);
        let found = self
            .job
            .steps
            .iter()
            .position(|s| self.limit.at == at(&s.id));
        found.unwrap_or(0)
    }

    fn candidates(&mut self) {
        use LimitKind as L;
        match self.limit.kind {
            L::AboveWindow => {
                self.stir();
                self.lower_density("highest");
            }
            L::EdgesBurn => {
                self.turn();
                self.stir();
                self.advised();
            }
            L::BelowWindow => {
                self.raise_density("lowest");
                self.batches();
                self.series();
                self.larger_supply(None);
            }
            L::SupplyTooSmall => {
                self.advised();
                self.batches();
                self.series();
                let wanted = self.number("wanted");
                self.larger_supply(wanted);
            }
            L::SupplyTooLarge => {
                let lowest: Option<Current> = self.number("lowest");
                let area = self.area();
                if let Some((lowest, area)) = lowest.zip(area) {
                    self.density(lowest / area * (1.0 + 1e-6));
                }
                self.bench(|b, s| b.lowest = s.number("wanted"));
            }
            L::DisplayTooCoarse => {
                self.bench(|b, _| b.display_step = Some(Current::milliampere(1.0)));
            }
            L::VoltsTooFew => {
                self.distance();
                self.less_volts();
                self.bench(|b, s| b.highest_volts = s.number("expected"));
            }
            L::Night => {
                self.start_earlier();
                self.faster();
            }
            L::BoreCloses | L::TooDeepForStock | L::TooDeepForResist | L::LineVanishes => {
                self.shallower();
                self.both_sides();
                self.other_film();
            }
            L::CounterTooSmall | L::CounterTooDense => self.larger_counter(),
            L::BathOverloaded | L::BathRunsLow => self.more_bath(),
            L::PoorContact => self.better_contact(),
            L::BarEnds => self.rule_of_the_bar(),
            L::TouchesWall => self.wider_vessel(),
            L::HeaterTooSmall => self.stronger_heater(),
            L::TooLate => {
                self.start_earlier();
                self.faster();
                self.shallower();
            }
            L::CoveringStalls => self.raise_density("stalls_below"),
            L::VesselsUneven
            | L::NotForThisPlace
            | L::NeedsStrike
            | L::WrongBase
            | L::SendOut
            | L::WrongLead => {}
        }
    }

    fn stir(&mut self) {
        let n = self.step();
        for (word, stirring) in STIRRINGS {
            if stirring == Stirring::Still || self.job.steps[n].stirring == stirring {
                continue;
            }
            let at = self.at_step("stirring");
            if self.attempt(Way::Stir, at, To::Word(word), |j| {
                j.steps[n].stirring = stirring
            }) {
                return;
            }
        }
    }

    fn at_step(&self, key: &str) -> FieldPath {
        let id = self
            .job
            .steps
            .get(self.step())
            .map_or("", |s| s.id.as_str());
        FieldPath::new("steps").child(id).child(key)
    }

    /// Turned half-way is as good as between two.
    fn turn(&mut self) {
        for (b, bath) in self.job.baths.iter().enumerate() {
            let Some(counter) = &bath.counter else {
                continue;
            };
            if counter.arrangement.unwrap_or_default() != Arrangement::OneSide {
                continue;
            }
            let at = FieldPath::new("baths")
                .child(&bath.id)
                .child("counter/arrangement");
            self.attempt(Way::Turn, at, To::Word("turned"), |j| {
                if let Some(c) = &mut j.baths[b].counter {
                    c.arrangement = Some(Arrangement::Turned);
                }
            });
        }
    }

    /// Wetted area that the step's current is for.
    fn area(&self) -> Option<quantity::WorkArea> {
        let k = self.now.plan.first_stage(self.step())?;
        self.now.likely.stages[k].area
    }

    fn density(&mut self, i: CurrentDensity) -> bool {
        let n = self.step();
        let at = self.at_step("drive/density");
        self.attempt(Way::Setting, at, To::Quantity(i.into()), |j| {
            if let Some(step) = j.steps.get_mut(n) {
                step.drive = Some(Drive::Density(i));
            }
        })
    }

    /// What a setting rounds to may pass a bound by a hair, or by half a display step: from the bound down.
    fn lower_density(&mut self, bound: &str) {
        let Some(bound) = self.number::<CurrentDensity>(bound) else {
            return;
        };
        for share in [1.0 - 1e-6, 0.95, 0.8, 0.6] {
            if self.density(bound * share) {
                return;
            }
        }
    }

    fn raise_density(&mut self, bound: &str) {
        let Some(bound) = self.number::<CurrentDensity>(bound) else {
            return;
        };
        for share in [1.0 + 1e-6, 1.05, 1.25] {
            if self.density(bound * share) {
                return;
            }
        }
    }

    fn advised(&mut self) {
        let n = self.step();
        let at = self.at_step("drive");
        self.attempt(Way::Setting, at, To::Word("advised"), |j| {
            if let Some(step) = j.steps.get_mut(n) {
                step.drive = Some(Drive::Advised);
            }
        });
    }

    /// Fewer of what hangs in numbers, one batch after the other: the largest number that helps.
    fn batches(&mut self) {
        for (p, piece) in self.job.pieces.iter().enumerate() {
            for batches in 2..=piece.count.min(8) {
                let count = piece.count.div_ceil(batches);
                let at = FieldPath::new("pieces").child(&piece.id).child("count");
                let to = To::Quantity(counted(count));
                let set = |j: &mut Job| j.pieces[p].count = count;
                if self.attempt_batches(Way::Batches, at, to, f64::from(batches), set) {
                    break;
                }
            }
        }
    }

    /// The pieces over several vessels, each with a bath like the first: what hangs in numbers is dealt out.
    fn series(&mut self) {
        let [step] = &self.job.steps[..] else { return };
        let [place] = &step.places[..] else { return };
        let joins = |p: &crate::job::Piece| p.joins.is_some() || p.leaves.is_some();
        let Some(bath) = self.job.baths.iter().find(|b| b.id == place.bath) else {
            return;
        };
        if self.job.pieces.iter().any(joins) {
            return;
        }
        for vessels in 2..=4 {
            let at = self.at_step("in");
            let to = To::Quantity(counted(vessels));
            let (place, bath) = (place.clone(), bath.clone());
            let worked = self.attempt(Way::Series, at, to, |j| {
                deal(j, &place.pieces, &bath, vessels);
            });
            if worked {
                return;
            }
        }
    }

    fn bench(&mut self, change: impl FnOnce(&mut crate::job::Bench, &Self)) {
        let mut supply = self.job.supply.clone();
        let (key, bench) = match &mut supply {
            Some(Supply::ConstantCurrent(bench)) => ("constant_current", bench),
            Some(Supply::Both(bench)) => ("both", bench),
            _ => return,
        };
        let before = bench.clone();
        change(bench, self);
        let changed: Option<(&str, AnyQuantity)> = if bench.lowest != before.lowest {
            bench.lowest.map(|q| ("lowest", q.into()))
        } else if bench.highest != before.highest {
            bench.highest.map(|q| ("highest", q.into()))
        } else if bench.display_step != before.display_step {
            bench.display_step.map(|q| ("display_step", q.into()))
        } else {
            bench.highest_volts.map(|q| ("highest_volts", q.into()))
        };
        if let Some((name, to)) = changed {
            let at = FieldPath::new("supply").child(key).child(name);
            self.attempt(Way::Supply, at, To::Quantity(to), |j| j.supply = supply);
        }
    }

    /// A supply that gives what is wanted; where the supply ruled, what the solution's typical density takes.
    fn larger_supply(&mut self, wanted: Option<Current>) {
        let typical = self
            .now
            .plan
            .steps
            .get(self.step())
            .and_then(|s| self.now.plan.bath(s))
            .and_then(|b| b.solution.window_still.typical())
            .zip(self.area())
            .map(|(i, a)| i * a);
        if let Some(wanted) = wanted.or(typical) {
            self.bench(|b, _| b.highest = Some(wanted * (1.0 + 1e-9)));
        }
    }

    /// Each bath's counter electrode nearer, in steps of a fifth, not below 2 cm.
    fn distance(&mut self) {
        let plan = &self.now.plan;
        let step = plan.steps.get(self.step());
        for vessel in step.map(|s| s.vessels.clone()).unwrap_or_default() {
            let id = &plan.baths[vessel.bath].id;
            let Some(b) = self.job.baths.iter().position(|b| b.id == *id) else {
                continue;
            };
            let now = self.job.baths[b].counter.as_ref().and_then(|c| c.distance);
            let Some(mut d) = now else { continue };
            let at = FieldPath::new("baths").child(id).child("counter/distance");
            loop {
                d = d * 0.8;
                if d < Length::mm(20.0) {
                    break;
                }
                let set = |j: &mut Job| {
                    if let Some(c) = &mut j.baths[b].counter {
                        c.distance = Some(d);
                    }
                };
                if self.attempt(Way::Distance, at.clone(), To::Quantity(d.into()), set) {
                    break;
                }
            }
        }
    }

    /// The density at which the ceiling no longer bites.
    fn less_volts(&mut self) {
        let Some(n) = self.now.likely.steps.get(self.step()).copied() else {
            return;
        };
        let ceiling = self.number::<quantity::Voltage>("ceiling");
        let (Some(volts), Some(ohmic), Some(i), Some(ceiling)) =
            (n.volts, n.ohmic, n.density, ceiling)
        else {
            return;
        };
        let left = (ceiling.si() - (volts.si() - ohmic.si())) / ohmic.si();
        if left > 0.0 {
            for share in [1.0 - 1e-6, 0.9] {
                if self.density(i * (left * share)) {
                    return;
                }
            }
        }
    }

    /// Begun so much earlier, in whole hours, that the night is not reached.
    fn start_earlier(&mut self) {
        let Some(start) = self.job.start.clone() else {
            return;
        };
        let Some(local) = crate::clock::Local::parse(&start.local) else {
            return;
        };
        for hours in 1..24 {
            let earlier = Time::hours(f64::from(hours));
            let moved = local.plus(earlier * -1.0).text();
            let at = FieldPath::new("start/local");
            let to = To::Quantity(AnyQuantity::from(earlier * -1.0));
            let set = |j: &mut Job| {
                if let Some(s) = &mut j.start {
                    s.local = moved;
                }
            };
            if self.attempt(Way::Time, at, to, set) {
                return;
            }
        }
    }

    /// As dense as edges and solution bear.
    fn faster(&mut self) {
        let n = self.step();
        let plan = &self.now.plan;
        let Some(step) = plan.steps.get(n) else {
            return;
        };
        let Some(bath) = plan.bath(step) else { return };
        let bound = crate::advise::window(bath, step.stirring).map(|w| w.1);
        let bound = bound.or(tree_density(bath, step));
        let now = self.now.likely.steps[n].density;
        if let Some((most, now)) = bound.zip(now) {
            for share in [0.999, 0.8, 0.6, 0.4] {
                if (most * share).si() > now.si() && self.density(most * share) {
                    return;
                }
            }
        }
    }

    /// A thinner layer or a shallower floor at the last step, by fifths.
    fn shallower(&mut self) {
        let Some(n) = self.job.steps.len().checked_sub(1) else {
            return;
        };
        for fifths in (1..5).rev() {
            let share = f64::from(fifths) / 5.0;
            let (key, until, to): (_, _, AnyQuantity) = match self.job.steps[n].until {
                Some(Until::Depth(d)) => ("depth", Until::Depth(d * share), (d * share).into()),
                Some(Until::Mean(d)) => ("mean", Until::Mean(d * share), (d * share).into()),
                Some(Until::Time(t)) => ("time", Until::Time(t * share), (t * share).into()),
                _ => return,
            };
            let id = &self.job.steps[n].id;
            let at = FieldPath::new("steps").child(id).child("until").child(key);
            let set = |j: &mut Job| j.steps[n].until = Some(until);
            if self.attempt(Way::Time, at, To::Quantity(to), set) {
                return;
            }
        }
    }

    /// The piece the limit stands at.
    fn piece(&self) -> Option<usize> {
        let at = |id: &str| FieldPath::new("pieces").child(id);
        self.job
            .pieces
            .iter()
            .position(|p| self.limit.at == at(&p.id))
    }

    fn both_sides(&mut self) {
        let Some(p) = self.piece() else { return };
        let sheet = matches!(self.job.pieces[p].base, Some(Base::Metal(_)));
        let once = |a: &crate::job::Artwork| a.sides != Some(Sides::Both);
        if sheet && self.job.pieces[p].artwork.as_ref().is_some_and(once) {
            let at = self.limit.at.child("artwork/sides");
            self.attempt(Way::Turn, at, To::Word("both"), |j| {
                if let Some(art) = &mut j.pieces[p].artwork {
                    art.sides = Some(Sides::Both);
                }
            });
        }
    }

    fn other_film(&mut self) {
        let Some(p) = self.piece() else { return };
        let films = [
            ("varnish", Resist::Varnish),
            ("dry_film", Resist::DryFilm),
            ("vinyl", Resist::Vinyl),
        ];
        for (word, film) in films {
            let at = self.limit.at.child("artwork/resist");
            let set = |j: &mut Job| {
                if let Some(art) = &mut j.pieces[p].artwork {
                    art.resist = Some(film);
                }
            };
            if self.limit.kind == LimitKind::TooDeepForResist
                && self.attempt(Way::Resist, at, To::Word(word), set)
            {
                return;
            }
        }
    }

    /// The bath the limit stands in.
    fn bath(&self) -> Option<usize> {
        let within = |id: &str| {
            self.limit
                .at
                .within(FieldPath::new("baths").child(id).as_str())
        };
        self.job.baths.iter().position(|b| within(&b.id))
    }

    /// A quarter more than what holds it, so that it also gets there.
    fn stronger_heater(&mut self) {
        if let Some((b, hold)) = self.bath().zip(self.number::<Power>("hold")) {
            let to = hold * 1.25;
            let at = self.limit.at.clone();
            self.attempt(Way::Supply, at, To::Quantity(to.into()), |j| {
                j.baths[b].heater = Some(to);
            });
        }
    }

    /// Wide enough that the sheet hangs 2 cm from the wall; its own distance, if given, is another matter.
    fn wider_vessel(&mut self) {
        let Some(b) = self.bath() else { return };
        let bath = &self.job.baths[b];
        let form = bath.counter.as_ref().and_then(|c| c.form);
        let Some((Form::Vessel { diameter, height }, gap)) =
            form.zip(self.now.plan.baths.get(b).and_then(|b| b.gap))
        else {
            return;
        };
        let to = diameter + (Length::mm(20.0) - gap) * 2.0;
        let at = self.limit.at.child("vessel/diameter");
        self.attempt(Way::Counter, at, To::Quantity(to.into()), |j| {
            if let Some(c) = &mut j.baths[b].counter {
                c.form = Some(Form::Vessel {
                    diameter: to,
                    height,
                });
            }
        });
    }

    fn larger_counter(&mut self) {
        let Some(b) = self.bath() else { return };
        let id = &self.job.baths[b].id;
        let planned = self.now.plan.baths.iter().find(|p| p.id == *id);
        let facing = planned.and_then(|p| p.facing);
        let times = |above: Option<f64>, below: Option<f64>| above.zip(below).map(|(a, b)| a / b);
        let si = |name: &str| {
            self.limit
                .numbers
                .iter()
                .find(|n| n.name == name)
                .map(|n| n.value.si)
        };
        let times = match self.limit.kind {
            LimitKind::CounterTooSmall => times(si("least"), si("ratio")),
            _ => times(si("density"), si("highest")),
        };
        if let Some((facing, times)) = facing.zip(times) {
            let to = facing * (times * (1.0 + 1e-6));
            let at = self.limit.at.clone();
            self.attempt(Way::Counter, at, To::Quantity(to.into()), |j| {
                if let Some(c) = &mut j.baths[b].counter {
                    c.facing = Some(to);
                }
            });
        }
    }

    /// More of it, by halves up to four times as much.
    fn more_bath(&mut self) {
        let Some(b) = self.bath() else { return };
        let Some(volume) = self.job.baths[b].volume else {
            return;
        };
        let at = FieldPath::new("baths")
            .child(&self.job.baths[b].id)
            .child("volume");
        for halves in 3..=8 {
            let to = volume * (f64::from(halves) / 2.0);
            let set = |j: &mut Job| j.baths[b].volume = Some(to);
            if self.attempt(Way::Volume, at.clone(), To::Quantity(to.into()), set) {
                return;
            }
        }
    }

    /// A bright clip's resistance, the usual one of the trade.
    fn better_contact(&mut self) {
        let Some(p) = self.piece() else { return };
        for ohm in [0.02, 0.005] {
            let to = quantity::Resistance::of_si(ohm);
            let at = self.limit.at.child("contact/contact");
            let set = |j: &mut Job| {
                if let Some(c) = &mut j.pieces[p].contact {
                    c.contact = Some(to);
                }
            };
            if self.attempt(Way::Contact, at, To::Quantity(to.into()), set) {
                return;
            }
        }
    }

    fn rule_of_the_bar(&mut self) {
        let Some(b) = self.bath() else { return };
        let to = Ratio::of_si(1.0);
        let at = self.limit.at.clone();
        self.attempt(Way::Counter, at, To::Quantity(to.into()), |j| {
            if let Some(c) = &mut j.baths[b].counter {
                c.over_bar = Some(to);
            }
        });
    }
}

fn counted(n: u32) -> AnyQuantity {
    AnyQuantity {
        key_unit: "count",
        si: f64::from(n),
    }
}

/// Deals the pieces of the one step out over several vessels, each with a bath like `bath`: of those in numbers an equal
/// part each, the rest and the single ones to the vessels in turn, back and forth.
fn deal(job: &mut Job, pieces: &[String], bath: &crate::job::Bath, vessels: u32) {
    let mut places: Vec<crate::job::InBath> = Vec::new();
    for v in 0..vessels {
        let id = if v == 0 {
            bath.id.clone()
        } else {
            format!("{}_{}", bath.id, v + 1)
        };
        if v > 0 {
            job.baths.push(crate::job::Bath {
                id: id.clone(),
                ..bath.clone()
            });
            let of_bath = format!("baths/{}/", bath.id);
            for own in job.assume.clone() {
                if let Some(rest) = own.at.as_str().strip_prefix(&of_bath) {
                    job.assume.push(crate::job::Assume {
                        at: FieldPath::new("baths").child(&id).child(rest),
                        value: own.value,
                    });
                }
            }
        }
        places.push(crate::job::InBath {
            bath: id,
            pieces: Vec::new(),
        });
    }
    let mut turn = 0u32;
    let mut next = || {
        let round = turn % (2 * vessels);
        turn += 1;
        if round < vessels {
            round
        } else {
            2 * vessels - 1 - round
        }
    };
    for piece in std::mem::take(&mut job.pieces) {
        if !pieces.contains(&piece.id) {
            job.pieces.push(piece);
            continue;
        }
        let mut counts = vec![piece.count / vessels; vessels as usize];
        for _ in 0..piece.count % vessels {
            counts[next() as usize] += 1;
        }
        let mut first = true;
        for (v, count) in counts.into_iter().enumerate() {
            if count == 0 {
                continue;
            }
            // The first part keeps the piece's own address, and with it its spread.
            let id = if first {
                piece.id.clone()
            } else {
                format!("{}_{}", piece.id, v + 1)
            };
            first = false;
            places[v].pieces.push(id.clone());
            job.pieces.push(crate::job::Piece {
                id,
                count,
                ..piece.clone()
            });
        }
    }
    if let Some(step) = job.steps.first_mut() {
        step.places = places;
    }
}
