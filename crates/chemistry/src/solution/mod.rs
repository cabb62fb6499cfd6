//! The solutions: what each takes, gives and asks. One file for each family, one block for each solution.

mod copper;
mod etch;
mod gold;
pub mod label;
mod make;
mod nickel;
mod noble;
mod other;
mod silver;

use crate::alloy::MetalId;
use crate::efficiency::Spot;
use crate::element::ElementId;
use crate::material::MaterialId;
use crate::notes::NoteId;
use crate::source::{Cited, Datum, Source};
use crate::substance::Ingredient;
use quantity::{
    Acidity, Concentration, Conductivity, CurrentDensity, CurrentPerVolume, Diffusivity, Fraction,
    Ratio, Temperature, Thickness, Time, Voltage, VolumePerArea, VolumePerCharge,
};
use serde::Serialize;

/// The id of a solution.
pub type SolutionId = &'static str;

/// What a solution is used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Process {
    /// Growing a shell.
    Electroform,
    /// Thin finish.
    Electroplate,
    /// Dissolving a masked sheet.
    Etch,
}

/// Whether a solution lays down a strike: a first thin layer for others to hold on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Strike {
    /// No.
    No,
    /// Also as a strike.
    Also,
    /// Only as a strike.
    Only,
}

/// Which electrode the work is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Electrode {
    /// On the minus lead: metal is laid on it.
    Cathode,
    /// On the plus lead: metal leaves it.
    Anode,
}

/// Solutions that behave alike towards a base metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// Acid copper sulfate.
    AcidCopper,
    /// Copper from pyrophosphate or citrate.
    MildCopper,
    /// Copper from cyanide.
    CyanideCopper,
    /// Nickel.
    Nickel,
    /// Chloride nickel strike.
    NickelStrike,
    /// Silver.
    Silver,
    /// Gold.
    Gold,
    /// Rhodium.
    Rhodium,
    /// Palladium and its alloys.
    Palladium,
    /// Bronze laid down as an alloy.
    Bronze,
    /// Chromium.
    Chromium,
    /// Etching in copper sulfate.
    SulfateEtch,
    /// Etching in dilute sulfuric acid.
    SulfuricEtch,
    /// Etching in copper nitrate.
    CopperNitrateEtch,
    /// Etching in sodium nitrate.
    SodiumNitrateEtch,
    /// Etching in silver nitrate.
    SilverEtch,
    /// Etching in chloride.
    ChlorideEtch,
    /// Etching in nitric acid.
    NitricEtch,
    /// Etching steel.
    SteelEtch,
    /// A solution of the person's own.
    Own,
}

/// How the solution is moved at the piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Stirring {
    /// Not at all.
    #[default]
    Still,
    /// A slow stirrer, rocking, or the piece turned now and then.
    Gentle,
    /// A strong stirrer or air.
    Vigorous,
}

/// What stirring a solution asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StirringNeed {
    /// None.
    None,
    /// Slow or gentle.
    Gentle,
    /// Needed, gentle or more.
    Needed,
    /// Vigorous.
    Vigorous,
}

/// Where a solution may be used. There is no third: none is called safe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// A trained adult with good ventilation and a waste plan.
    Conditions,
    /// A shop only.
    Shop,
}

/// Where somebody works.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting {
    /// At home.
    Home,
    /// In a supervised class of adults.
    Class,
    /// In a shop set up for it.
    Shop,
}

/// Whether a solution can be chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choosable {
    /// Offered with its conditions.
    Offered,
    /// Needs a shop: hidden until asked for, explained, never suggested.
    NeedsShop,
    /// Explained, never chosen.
    Never {
        /// Why.
        note: NoteId,
    },
    /// Not chosen: no window of densities is known.
    NoWindow,
}

/// What a note is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Column {
    /// [`Solution::valences`].
    Valences,
    /// [`Solution::attacks`].
    Attacks,
    /// [`Solution::composition`].
    Composition,
    /// [`Solution::metal_content`].
    MetalContent,
    /// [`Solution::saturation`].
    Saturation,
    /// [`Solution::temperature`].
    Temperature,
    /// [`Solution::acidity`].
    Acidity,
    /// [`Solution::window_still`].
    WindowStill,
    /// [`Solution::highest_stirred`].
    HighestStirred,
    /// [`Solution::efficiency`].
    Efficiency,
    /// [`Solution::efficiency_exponent`].
    EfficiencyExponent,
    /// [`Solution::counters`].
    Counters,
    /// [`Solution::counter_ratio`].
    CounterRatio,
    /// [`Solution::counter_highest`].
    CounterHighest,
    /// [`Solution::conductivity`].
    Conductivity,
    /// [`Solution::slope`].
    Slope,
    /// [`Solution::evenness_factor`].
    EvennessFactor,
    /// [`Solution::diffusivity`].
    Diffusivity,
    /// [`Solution::surface_volts`].
    SurfaceVolts,
    /// [`Solution::cell_volts`].
    CellVolts,
    /// [`Solution::stirring`].
    Stirring,
    /// [`Solution::additive`].
    Additive,
    /// [`Solution::drag_out`].
    DragOut,
    /// [`Solution::load`].
    Load,
    /// [`Solution::session`].
    Session,
    /// [`Solution::suits`].
    Suits,
    /// [`Solution::rules`].
    Rules,
    /// [`Solution::never_mix`].
    NeverMix,
    /// [`Solution::waste`].
    Waste,
    /// [`Solution::hazards`].
    Hazards,
    /// [`Solution::home`].
    Home,
    /// [`Solution::class_use`].
    ClassUse,
    /// [`Solution::own_strike`].
    OwnStrike,
}

/// The strike a solution asks for, where it is made up like the solution itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrikeRecipe {
    /// What it is made up from.
    pub composition: &'static [Ingredient],
    /// pH.
    pub acidity: Datum<Acidity>,
    /// Current density.
    pub density: Datum<CurrentDensity>,
    /// How long.
    pub time: Datum<Time>,
}

/// One solution of the catalogue. A field that is unknown is asked of the person, from the solution's own sheet. Where
/// only the ends of a band are known its typical value is their middle, unless a note says otherwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solution {
    /// Its id, never renamed or reused.
    pub id: SolutionId,
    /// Its family.
    pub family: Family,
    /// What it is used for.
    pub process: Process,
    /// Whether it lays down a strike.
    pub strike: Strike,
    /// Which electrode the work is.
    pub work: Electrode,
    /// The metal it lays down; in an etch the metal its figures are for. Empty where there is no one metal: such a
    /// solution is never choosable.
    pub metal: MetalId,
    /// Charges per atom of that metal in this solution, of an alloy its greatest part's; 0 where `metal` is empty.
    pub valence: u8,
    /// The valence of every element it lays down or dissolves.
    pub valences: Cited<&'static [(ElementId, u8)]>,
    /// In an etch, the elements and alloys it suits; else empty.
    pub attacks: Cited<&'static [MetalId]>,
    /// What it is made up from.
    pub composition: &'static [Ingredient],
    /// Mass of the metal per volume.
    pub metal_content: Datum<Concentration>,
    /// Mass of the metal per volume at which its salt stays on a dissolving sheet.
    pub saturation: Datum<Concentration>,
    /// Temperature.
    pub temperature: Datum<Temperature>,
    /// pH.
    pub acidity: Datum<Acidity>,
    /// The densities it takes without stirring. A value alone is a typical one and no window.
    pub window_still: Datum<CurrentDensity>,
    /// The highest it takes when stirred: a band's lower end gently, its upper end vigorously.
    pub highest_stirred: Datum<CurrentDensity>,
    /// Share of the charge that makes metal, at the typical density. Above 0; a cathode's at most 1, an anode's 1.1.
    pub efficiency: Datum<Fraction>,
    /// Exponent m of efficiency = typical x (density / typical density)^-m, 0 or more; counted 0 where unknown.
    pub efficiency_exponent: Datum<Ratio>,
    /// What the counter electrode may be.
    pub counters: Cited<&'static [MaterialId]>,
    /// Wetted area of the counter electrode over that of the work.
    pub counter_ratio: Datum<Ratio>,
    /// The highest density on the counter electrode.
    pub counter_highest: Datum<CurrentDensity>,
    /// Conductivity.
    pub conductivity: Datum<Conductivity>,
    /// Slope of the polarisation curve per decade over 2.303.
    pub slope: Datum<Voltage>,
    /// How far the evenness length may lie from conductivity times slope over density.
    pub evenness_factor: Datum<Ratio>,
    /// How fast the metal's ion spreads, at 25 C.
    pub diffusivity: Datum<Diffusivity>,
    /// Overvoltage of work and counter electrode together with leads: what the supply shows beyond the solution's own.
    pub surface_volts: Datum<Voltage>,
    /// Voltage of the whole cell in use.
    pub cell_volts: Datum<Voltage>,
    /// What stirring it asks for.
    pub stirring: Option<Cited<StirringNeed>>,
    /// Volume of additive used up per charge.
    pub additive: Datum<VolumePerCharge>,
    /// Volume that leaves with the work, for jewellery shapes.
    pub drag_out: Datum<VolumePerArea>,
    /// The highest current for the volume of the bath.
    pub load: Datum<CurrentPerVolume>,
    /// The most to lay down in one go.
    pub session: Datum<Thickness>,
    /// What it suits.
    pub suits: Cited<&'static [NoteId]>,
    /// What to do before and during.
    pub rules: &'static [Cited<NoteId>],
    /// What must never come together with it.
    pub never_mix: Cited<&'static [NoteId]>,
    /// Where it goes when it is spent.
    pub waste: Cited<&'static [NoteId]>,
    /// Hazard statements by the made-up solution's and the salts' usual sheets. The sheet in the person's hand wins.
    pub hazards: Cited<&'static [&'static str]>,
    /// Suitability for a home studio, and the wording.
    pub home: Cited<Place>,
    /// The note to `home`.
    pub home_note: NoteId,
    /// Suitability for a supervised class of adults.
    pub class_use: Cited<Place>,
    /// Why it is explained and never chosen; none where it can be.
    pub never: Option<NoteId>,
    /// The strike it asks for, where that is known.
    pub own_strike: Option<&'static StrikeRecipe>,
    /// Notes to single fields.
    pub notes: &'static [(Column, NoteId)],
}

impl Solution {
    /// Whether it can be chosen by somebody who works at `setting`.
    pub fn choosable(&self, setting: Setting) -> Choosable {
        let place = match setting {
            Setting::Home => self.home.value,
            Setting::Class => self.class_use.value,
            Setting::Shop => Place::Conditions,
        };
        match (self.never, &self.window_still, place) {
            (Some(note), ..) => Choosable::Never { note },
            (None, Datum::Unknown | Datum::Value(_), _) => Choosable::NoWindow,
            (None, Datum::Band(_), Place::Shop) => Choosable::NeedsShop,
            (None, Datum::Band(_), Place::Conditions) => Choosable::Offered,
        }
    }

    /// Exponent of the efficiency at a spot, 0 or more.
    pub fn exponent(&self, spot: Spot) -> Ratio {
        match spot {
            Spot::Mean => self.efficiency_exponent.typical(),
            Spot::Thinnest => None,
        }
        .unwrap_or(Ratio::of_si(0.0))
    }

    /// The notes to one field.
    pub fn notes_on(&self, column: Column) -> impl Iterator<Item = NoteId> {
        self.notes
            .iter()
            .filter(move |(on, _)| *on == column)
            .map(|(_, note)| *note)
    }

    /// Calls `see` for every known value with its source.
    pub fn each_source(&self, mut see: impl FnMut(Column, Source)) {
        let mut column = |column, source: Option<Source>| {
            if let Some(source) = source {
                see(column, source);
            }
        };
        column(Column::MetalContent, self.metal_content.source());
        column(Column::Saturation, self.saturation.source());
        column(Column::Temperature, self.temperature.source());
        column(Column::Acidity, self.acidity.source());
        column(Column::WindowStill, self.window_still.source());
        column(Column::HighestStirred, self.highest_stirred.source());
        column(Column::Efficiency, self.efficiency.source());
        column(
            Column::EfficiencyExponent,
            self.efficiency_exponent.source(),
        );
        column(Column::CounterRatio, self.counter_ratio.source());
        column(Column::CounterHighest, self.counter_highest.source());
        column(Column::Conductivity, self.conductivity.source());
        column(Column::Slope, self.slope.source());
        column(Column::EvennessFactor, self.evenness_factor.source());
        column(Column::Diffusivity, self.diffusivity.source());
        column(Column::SurfaceVolts, self.surface_volts.source());
        column(Column::CellVolts, self.cell_volts.source());
        column(Column::Stirring, self.stirring.map(|s| s.source));
        column(Column::Additive, self.additive.source());
        column(Column::DragOut, self.drag_out.source());
        column(Column::Load, self.load.source());
        column(Column::Session, self.session.source());
        column(Column::Home, Some(self.home.source));
        column(Column::ClassUse, Some(self.class_use.source));
        let mut list = |on, length: usize, source| column(on, (length > 0).then_some(source));
        list(
            Column::Valences,
            self.valences.value.len(),
            self.valences.source,
        );
        list(
            Column::Attacks,
            self.attacks.value.len(),
            self.attacks.source,
        );
        list(
            Column::Counters,
            self.counters.value.len(),
            self.counters.source,
        );
        list(Column::Suits, self.suits.value.len(), self.suits.source);
        list(
            Column::NeverMix,
            self.never_mix.value.len(),
            self.never_mix.source,
        );
        list(Column::Waste, self.waste.value.len(), self.waste.source);
        list(
            Column::Hazards,
            self.hazards.value.len(),
            self.hazards.source,
        );
        for rule in self.rules {
            column(Column::Rules, Some(rule.source));
        }
        for part in self.composition {
            column(Column::Composition, part.source());
        }
        if let Some(strike) = self.own_strike {
            for part in strike.composition {
                column(Column::OwnStrike, part.source());
            }
            column(Column::OwnStrike, strike.acidity.source());
            column(Column::OwnStrike, strike.density.source());
            column(Column::OwnStrike, strike.time.source());
        }
    }
}

/// All solutions.
pub const SOLUTIONS: &[Solution] = &[
    copper::ACID_FORM,
    copper::ACID_THROW,
    copper::ACID_LOW,
    copper::PYRO,
    copper::CITRATE,
    copper::CYANIDE,
    nickel::WATTS,
    nickel::SULFAMATE,
    nickel::CHLORIDE_STRIKE,
    silver::CYANIDE,
    silver::FREE,
    silver::HYDANTOIN,
    silver::SUCCINIMIDE,
    gold::FLASH,
    gold::ACID,
    gold::NEUTRAL,
    gold::SULFITE,
    noble::RHODIUM,
    noble::PALLADIUM_ACID,
    noble::PALLADIUM_NICKEL,
    noble::PALLADIUM_AMMONIA,
    noble::PALLADIUM_AMMONIA_CHLORIDE,
    other::WHITE_BRONZE,
    other::BRONZE,
    other::CHROMIUM_6,
    etch::SULFATE_COPPER,
    etch::SULFATE_BRASS,
    etch::COPPER_NITRATE,
    etch::SILVER_NITRATE,
    etch::SODIUM_NITRATE,
    etch::SULFURIC,
    etch::CHLORIDE,
    etch::NITRIC,
    etch::STEEL,
];
