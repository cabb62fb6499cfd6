//! Addresses used by the page. Those of a piece are written for the first one; [`of`] turns them to another.

use std::borrow::Cow;

/// The pieces of the job, by id, in order of making.
pub const PIECES: &str = "pieces";
/// How many pieces were ever made: an id is never used again.
pub const MADE: &str = "pieces/made";
/// Metric, or US shop units: what a bare number means, and how numbers are printed.
pub const UNITS: &str = "units";
/// Point or comma in printed numbers.
pub const DECIMAL: &str = "decimal";
/// Growing, a thin coat, or an etch.
pub const PROCESS: &str = "steps/s2/kind";
/// Which kind of piece, or `area`; asked apart for an etch.
pub const SHAPE: &str = "pieces/p1/extent";
/// The person's own name of a piece.
pub const LABEL: &str = "pieces/p1/label";
/// The solution; asked apart for each process.
pub const SOLUTION: &str = "baths/b1/solution";
/// Volume of the bath.
pub const VOLUME: &str = "baths/b1/volume";
/// Charge the bath has passed.
pub const PASSED: &str = "baths/b1/passed";
/// Open share of a masked sheet.
pub const OPEN: &str = "pieces/p1/open";
/// Thickness of the sheet.
pub const STOCK: &str = "pieces/p1/base/metal/thickness";
/// Width of the openings in the film.
pub const OPENING: &str = "pieces/p1/artwork/opening";
/// Width of metal to be left.
pub const LAND: &str = "pieces/p1/artwork/land_wanted";
/// Length of line or kerf.
pub const ART_LENGTH: &str = "pieces/p1/artwork/length";
/// Depth over undercut.
pub const ETCH_FACTOR: &str = "pieces/p1/artwork/etch_factor";
/// From one side or both.
pub const SIDES: &str = "pieces/p1/artwork/sides";
/// Fine lines or a wide field.
pub const MODEL: &str = "pieces/p1/artwork/model";
/// The film.
pub const RESIST: &str = "pieces/p1/artwork/resist";
/// The lead on the sheet.
pub const LEAD: &str = "pieces/p1/artwork/lead";
/// Depth of an etch.
pub const DEPTH: &str = "steps/s2/until/depth";
/// Which way a hollow looks.
pub const OPENING_WAY: &str = "pieces/p1/opening";
/// Thinnest over average, the person's own.
pub const RATIO: &str = "pieces/p1/min_over_mean";
/// Area known: one side of it.
pub const AREA: &str = "pieces/p1/extent/area/one_side";
/// How many sides of it get wet.
pub const AREA_SIDES: &str = "pieces/p1/extent/area/sides";
/// Real over smooth surface of a known area.
pub const AREA_TEXTURE: &str = "pieces/p1/extent/area/texture";
/// How it was measured.
pub const METHOD: &str = "pieces/p1/extent/area/method";
/// Real over smooth surface of a shape.
pub const TEXTURE: &str = "pieces/p1/extent/parts/a/texture_outside";
/// Which way it is measured better.
pub const MEASURE: &str = "pieces/p1/measure";
/// The card's long side in a picture.
pub const CARD_LONG: &str = "pieces/p1/measure/card/long";
/// Its short side.
pub const CARD_SHORT: &str = "pieces/p1/measure/card/short";
/// The piece's area in the picture.
pub const CARD_PIECE: &str = "pieces/p1/measure/card/piece";
/// Mass of the cut-out tracing.
pub const TRACING: &str = "pieces/p1/measure/tracing/mass";
/// Mass of a square of the same paper.
pub const SQUARE: &str = "pieces/p1/measure/tracing/square";
/// Area of that square.
pub const SQUARE_AREA: &str = "pieces/p1/measure/tracing/square_area";
/// Which foil.
pub const FOIL: &str = "pieces/p1/measure/foil";
/// Mass of the foil wrapped round the piece.
pub const WRAP: &str = "pieces/p1/measure/foil/mass";
/// Smallest step of the scale.
pub const SCALE_STEP: &str = "pieces/p1/measure/scale_step";
/// How many alike.
pub const COUNT: &str = "pieces/p1/count";
/// Hanger wire, thickness.
pub const HANGER_WIRE: &str = "pieces/p1/hanger/wire_d";
/// Hanger wire, length in the liquid.
pub const HANGER_WET: &str = "pieces/p1/hanger/wet";
/// Hanger wires.
pub const HANGER_WIRES: &str = "pieces/p1/hanger/wires";
/// Resistance from bar to piece.
pub const CONTACT: &str = "pieces/p1/contact/contact";
/// The clip it hangs on, by a name several pieces share.
pub const CLIP: &str = "pieces/p1/contact/clip";
/// Resistance of the piece's own lead.
pub const CONTACT_LEAD: &str = "pieces/p1/contact/lead";
/// How long after the growing began it is hung in; empty for at the start.
pub const JOINS: &str = "pieces/p1/joins/after";
/// How long after the growing began it is taken out; empty for at the end.
pub const LEAVES: &str = "pieces/p1/leaves/after";
/// What it is made of.
pub const BASE: &str = "pieces/p1/base";
/// Inner diameter before, where it must fit.
pub const BORE: &str = "pieces/p1/fit/bore";
/// Inner diameter to end with.
pub const WANTED_BORE: &str = "pieces/p1/fit/wanted_bore";
/// Whether there is a covering step.
pub const COVER: &str = "steps/s1";
/// How its current is found.
pub const COVER_DRIVE: &str = "steps/s1/drive";
/// Density while covering.
pub const COVER_DENSITY: &str = "steps/s1/drive/density";
/// How long covering takes.
pub const COVER_TIME: &str = "steps/s1/until/time";
/// How many vessels stand one behind the other.
pub const VESSELS: &str = "steps/s2/in";
/// How the growth current is found.
pub const DRIVE: &str = "steps/s2/drive";
/// Own density.
pub const DENSITY: &str = "steps/s2/drive/density";
/// Own current.
pub const CURRENT: &str = "steps/s2/drive/current";
/// What for.
pub const UNTIL: &str = "steps/s2/until";
/// Own thickness.
pub const MEAN: &str = "steps/s2/until/mean";
/// Own thinnest.
pub const THINNEST: &str = "steps/s2/until/thinnest";
/// Own mass.
pub const MASS: &str = "steps/s2/until/mass";
/// Until a time of day.
pub const CLOCK: &str = "steps/s2/until/clock";
/// For a length of time.
pub const TIME: &str = "steps/s2/until/time";
/// How the solution is moved.
pub const STIRRING: &str = "steps/s2/stirring";
/// Temperature of the solution.
pub const TEMPERATURE: &str = "steps/s2/temperature";
/// Own voltage ceiling.
pub const CEILING: &str = "steps/s2/ceiling";
/// Where the counter electrode stands.
pub const ARRANGEMENT: &str = "baths/b1/counter/arrangement";
/// What it is made of; asked apart for each process.
pub const COUNTER: &str = "baths/b1/counter/material";
/// Its area that faces the work.
pub const FACING: &str = "baths/b1/counter/facing";
/// What it is, where its area is worked out; empty where that is typed.
pub const FORM: &str = "baths/b1/counter/form";
/// Width of a plate.
pub const PLATE_WIDTH: &str = "baths/b1/counter/form/plate/width";
/// Its wetted height.
pub const PLATE_HEIGHT: &str = "baths/b1/counter/form/plate/height";
/// How many plates.
pub const PLATES: &str = "baths/b1/counter/form/plate/plates";
/// Wire of a coil.
pub const COIL_WIRE: &str = "baths/b1/counter/form/coil/wire_d";
/// Its length in the bath.
pub const COIL_LENGTH: &str = "baths/b1/counter/form/coil/length";
/// Mass of scrap.
pub const SCRAP: &str = "baths/b1/counter/form/scrap/mass";
/// Its thickness.
pub const SCRAP_THICK: &str = "baths/b1/counter/form/scrap/thickness";
/// Width of the vessel that is the counter electrode.
pub const VESSEL_D: &str = "baths/b1/counter/form/vessel/diameter";
/// How high it is filled.
pub const VESSEL_HEIGHT: &str = "baths/b1/counter/form/vessel/height";
/// Open surface of the bath.
pub const SURFACE: &str = "baths/b1/surface";
/// Power of the heater at hand.
pub const HEATER: &str = "baths/b1/heater";
/// How far off.
pub const DISTANCE: &str = "baths/b1/counter/distance";
/// The bath's own efficiency.
pub const EFFICIENCY: &str = "baths/b1/efficiency";
/// Its own ratio from batch to batch.
pub const BATCH: &str = "baths/b1/batch";
/// Its own conductivity.
pub const CONDUCTIVITY: &str = "baths/b1/conductivity";
/// A factor on its own evenness length.
pub const EVENNESS_FACTOR: &str = "baths/b1/evenness_factor";
/// Own overvoltage of both surfaces and the leads.
pub const SURFACE_VOLTS: &str = "baths/b1/surface_volts";
/// How many students share the tank, in a class.
pub const STUDENTS: &str = "class/students";
/// How long until the bell.
pub const LESSON: &str = "class/lesson";
/// The bare wire that hangs along, for the calipers.
pub const WITNESS: &str = "class/witness_d";
/// The layers that come after the first, by id, in order.
pub const LAYERS: &str = "steps";
/// How many steps were ever made: an id is never used again.
pub const LAYERS_MADE: &str = "steps/made";
/// Whether the area grows with the layer.
pub const GROWTH: &str = "effects/growth";
/// The metal of the person's own solution.
pub const OWN_METAL: &str = "own/solutions/own/metal";
/// The density its label gives.
pub const OWN_DENSITY: &str = "own/solutions/own/density";
/// The highest density its label gives.
pub const OWN_HIGHEST: &str = "own/solutions/own/highest";
/// Its efficiency.
pub const OWN_EFFICIENCY: &str = "own/solutions/own/efficiency";
/// What a charge moves by its label.
pub const OWN_MOVES: &str = "own/solutions/own/moves";
/// Volts its label gives.
pub const OWN_VOLTS: &str = "own/solutions/own/volts";
/// What the supply holds.
pub const SUPPLY: &str = "supply";
/// Lowest voltage of a supply that holds the voltage.
pub const VOLTS_LOWEST: &str = "supply/constant_voltage/lowest";
/// Its highest.
pub const VOLTS_HIGHEST: &str = "supply/constant_voltage/highest_volts";
/// Step of its voltage display.
pub const VOLTS_STEP: &str = "supply/constant_voltage/display_step";
/// Highest current it gives.
pub const VOLTS_CURRENT: &str = "supply/constant_voltage/highest";
/// Current of the first of a few settings.
pub const FIXED_CURRENT: &str = "supply/fixed_settings/f1/current";
/// What a copper strip in series gained at it.
pub const FIXED_GAIN: &str = "supply/fixed_settings/f1/strip_gain";
/// In this time.
pub const FIXED_TIME: &str = "supply/fixed_settings/f1/strip_time";
/// Lowest current.
pub const LOWEST: &str = "supply/constant_current/lowest";
/// Highest current.
pub const HIGHEST: &str = "supply/constant_current/highest";
/// Display step.
pub const DISPLAY_STEP: &str = "supply/constant_current/display_step";
/// What the display shows too little.
pub const OFFSET: &str = "supply/constant_current/offset";
/// Highest voltage.
pub const VOLTS: &str = "supply/constant_current/highest_volts";
/// Home, class or shop.
pub const PLACE: &str = "place";
/// When it starts: a time of day, or empty for now.
pub const START: &str = "start/local";
/// The longest session somebody attends.
pub const SESSION: &str = "attend/session";
/// From the end of one to the start of the next.
pub const BETWEEN: &str = "attend/between";
/// Date and time it must be done by.
pub const DUE: &str = "attend/due";
/// How long the sealer cures.
pub const CURE: &str = "attend/cure";
/// How long the coat dries.
pub const DRY: &str = "attend/dry";
/// What went wrong.
pub const HAPPENED: &str = "after/what";
/// In which step.
pub const HAPPENED_IN: &str = "after/step";
/// How long after its start.
pub const HAPPENED_AT: &str = "after/after";
/// How long the current was away; empty for not known.
pub const GAP: &str = "after/power_cut/gap";
/// How long the leads were the wrong way round.
pub const REVERSED_FOR: &str = "after/reversed/for";
/// What flowed meanwhile; empty for what was set.
pub const REVERSED_CURRENT: &str = "after/reversed/current";
/// From which piece something was filed off.
pub const FILED_PIECE: &str = "after/filed/piece";
/// How much.
pub const FILED_MASS: &str = "after/filed/mass";
/// How much of it is bare now.
pub const FILED_AREA: &str = "after/filed/area";

/// The address of what is known of a metal in the bath: `now` or `floor`.
pub fn holds(metal: &str, what: &str) -> String {
    ["baths/b1/holds/", metal, "/", what].concat()
}

/// The address of a metal's price.
pub fn price(metal: &str) -> String {
    ["prices/", metal, "/price"].concat()
}

/// Before the address of an input, how sure it is.
const SPREAD: &str = "spreads/";

/// The address of how sure an input is.
pub fn spread(of: &str) -> String {
    [SPREAD, of].concat()
}

/// The input whose certainty stands at this address.
pub fn spread_of(address: &str) -> Option<&str> {
    address.strip_prefix(SPREAD)
}

/// The address of the first piece's input, turned to another piece's; any other address stays.
pub fn of(address: &str, piece: &str) -> String {
    match address.strip_prefix("pieces/p1/") {
        Some(rest) => ["pieces/", piece, "/", rest].concat(),
        None => address.to_owned(),
    }
}

/// The address of the growing step's input, or of its bath's, turned to a later layer's; any other address stays.
pub fn in_step(address: &str, step: &str) -> String {
    let number = step.trim_start_matches('s');
    match (
        address.strip_prefix("steps/s2/"),
        address.strip_prefix("baths/b1/"),
    ) {
        (Some(rest), _) => ["steps/", step, "/", rest].concat(),
        (_, Some(rest)) if step != "s2" => ["baths/b", number, "/", rest].concat(),
        _ => address.to_owned(),
    }
}

/// The address of the first of a few settings, turned to another's.
pub fn setting(address: &str, id: &str) -> String {
    address.replacen("/f1/", &["/", id, "/"].concat(), 1)
}

/// The piece an address belongs to.
pub fn piece_of(address: &str) -> Option<&str> {
    let (piece, _) = address.strip_prefix("pieces/")?.split_once('/')?;
    Some(piece)
}

/// Any piece's, layer's or setting's address as it would be of the first one: what labels and declarations go by.
pub fn plain(address: &str) -> Cow<'_, str> {
    for (whole, first) in [
        ("pieces/", "p1"),
        ("steps/", "s2"),
        ("baths/", "b1"),
        ("supply/fixed_settings/", "f1"),
    ] {
        let found = address
            .strip_prefix(whole)
            .and_then(|rest| rest.split_once('/'));
        if let Some((id, rest)) = found
            && id != first
            && id != "s1"
        {
            return Cow::Owned([whole, first, "/", rest].concat());
        }
    }
    Cow::Borrowed(address)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_turns_to_another_piece_and_back() {
        assert_eq!(of(COUNT, "p3"), "pieces/p3/count");
        assert_eq!(plain("pieces/p3/count"), COUNT);
        assert_eq!(plain(COUNT), COUNT);
        assert_eq!(of(VOLUME, "p3"), VOLUME);
        assert_eq!(plain(VOLUME), VOLUME);
        assert_eq!(in_step(DENSITY, "s3"), "steps/s3/drive/density");
        assert_eq!(plain("steps/s3/drive/density"), DENSITY);
        assert_eq!(plain(COVER_DENSITY), COVER_DENSITY);
        assert_eq!(in_step(VOLUME, "s4"), "baths/b4/volume");
        assert_eq!(in_step(VOLUME, "s2"), VOLUME);
        assert_eq!(plain("baths/b4/volume"), VOLUME);
        assert_eq!(plain("supply/fixed_settings/f3/current"), FIXED_CURRENT);
        assert_eq!(piece_of("pieces/p12/base@etch"), Some("p12"));
        assert_eq!(piece_of(PIECES), None);
        assert_eq!(spread_of(&spread(COUNT)), Some(COUNT));
    }
}
