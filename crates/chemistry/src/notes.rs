//! The notes: conditions, rules and reasons that the catalogue names by id. The words for them are the page's.

/// The id of a note, never renamed or reused.
pub type NoteId = &'static str;

macro_rules! notes {
    ($($(#[$doc:meta])* $name:ident = $id:literal;)+) => {
        $($(#[$doc])* pub const $name: NoteId = $id;)+

        /// Every note, once: whoever has words for all of these has words for the whole catalogue.
        pub const ALL: &[NoteId] = &[$($name),+];
    };
}

notes! {
    // On single values.
    /// The value is a bound from above: the true one lies under it.
    BELOW = "below";
    /// The value is a bound from below: the true one lies at or over it.
    AT_LEAST = "at_least";
    /// Only the two ends are printed; the typical between them is chosen.
    TYPICAL_CHOSEN = "typical_chosen";
    /// The lower end only is known besides the typical.
    UPPER_END_UNKNOWN = "upper_end_unknown";
    /// Strongly acid or 8 to 9: its own sheet says which.
    PH_BY_SHEET = "ph_by_sheet";
    /// How much: its own sheet says.
    BY_SHEET = "by_sheet";
    /// Never above this temperature.
    NEVER_HOTTER = "never_hotter";
    /// Flat to about 0.7 of the limiting density, then falls and turns to powder.
    EFFICIENCY_FLAT_TO_LIMIT = "efficiency_flat_to_limit";
    /// Falls as the density rises; by how much is not known.
    EFFICIENCY_FALLS = "efficiency_falls";
    /// Falls as the density rises; the sheet's mg/A.min tells.
    EFFICIENCY_ASK_SHEET = "efficiency_ask_sheet";
    /// Drops below 1 A/dm2 or pH 3.
    EFFICIENCY_DROPS_LOW = "efficiency_drops_low";
    /// Falls where a film forms.
    EFFICIENCY_FILM = "efficiency_film";
    /// The limiting density unstirred is only about 1.3 A/dm2.
    LOW_LIMIT = "low_limit";
    /// Valence 2 until the salt film, about 3 A/dm2 unstirred, then between 1 and 2.
    SALT_FILM = "salt_film";
    /// Typically without acid; with 60 g/L of acid about 0.16 S/cm.
    CONDUCTIVITY_NO_ACID = "conductivity_no_acid";
    /// Zinc leaves together with copper, no rate of its own.
    ZINC_WITH_COPPER = "zinc_with_copper";
    /// Copper leaves with valence 1 in chloride: the depth per charge doubles.
    VALENCE_ONE = "valence_one";
    /// Alloy and colour move with density.
    ALLOY_WITH_DENSITY = "alloy_with_density";
    /// The film is bright from 1 to 2.5 A/dm2; above about 5 blue salt and no more dissolving.
    COUNTER_FILM = "counter_film";
    /// In a bag.
    COUNTER_BAGGED = "counter_bagged";
    /// The handbook names stainless here: not a habit for other baths.
    COUNTER_STAINLESS_ONLY_HERE = "counter_stainless_only_here";
    /// Stir near it too.
    COUNTER_STIRRED = "counter_stirred";
    /// It may stop dissolving.
    COUNTER_PASSIVATES = "counter_passivates";
    /// The same size as the sheet.
    COUNTER_SAME_SIZE = "counter_same_size";
    /// Small beakers 0.2 to 0.5 A/L.
    LOAD_SMALL_BEAKERS = "load_small_beakers";
    /// More is possible.
    SESSION_MORE_POSSIBLE = "session_more_possible";
    /// Then smooth and re-enter.
    SESSION_SMOOTH = "session_smooth";
    /// 5 to 30 seconds.
    SESSION_SECONDS = "session_seconds";
    /// 30 to 145 seconds at 2 A/dm2; it cracks above 2 to 3 um.
    SESSION_RHODIUM = "session_rhodium";
    /// A stirrer, rocking or air; none only below about 1 A/dm2.
    STIR_STILL_BELOW_ONE = "stir_still_below_one";
    /// Air or a stirrer, and a wetting agent.
    STIR_WETTING_AGENT = "stir_wetting_agent";
    /// At the counter electrode too.
    STIR_ANODE_TOO = "stir_anode_too";
    /// Slowly, no bubbles on the resist.
    STIR_NO_BUBBLES = "stir_no_bubbles";
    /// So that the sludge leaves the sheet.
    STIR_SLUDGE_AWAY = "stir_sludge_away";
    /// Metal is put back by charge or weight.
    ADD_METAL_BY_CHARGE = "add_metal_by_charge";
    /// Ammonia leaves and is put back.
    ADD_AMMONIA = "add_ammonia";
    /// Sulfite is put back.
    ADD_SULFITE = "add_sulfite";
    /// Silver is put back: more leaves the bath at the counter electrode than the sheet gives.
    ADD_SILVER = "add_silver";
    /// A few parts per million of copper spoil it.
    SPOILT_BY_COPPER = "spoilt_by_copper";
    /// Pyrophosphate to copper 7.0 to 7.5 by mass; a strike 10 or more, diluted.
    PYRO_RATIO = "pyro_ratio";
    /// Hard gold holds cobalt or nickel; its colour and density move with them.
    HARD_GOLD_ALLOY = "hard_gold_alloy";
    /// The slope is the hydantoin bath's.
    SLOPE_FROM_HYDANTOIN = "slope_from_hydantoin";
    /// Dull.
    DULL = "dull";
    /// Mirror bright.
    MIRROR = "mirror";
    /// Hazards as bought; the made-up bath at 60 g/L acid H315 and H319 or H318.
    HAZARD_AS_BOUGHT = "hazard_as_bought";
    /// The acid is stronger here.
    HAZARD_STRONGER_ACID = "hazard_stronger_acid";
    /// By its own sheet.
    HAZARD_BY_SHEET = "hazard_by_sheet";
    /// After nickel silver also nickel's.
    HAZARD_AFTER_NICKEL_SILVER = "hazard_after_nickel_silver";
    /// The sludge's too.
    HAZARD_SLUDGE = "hazard_sludge";
    /// Chlorine's, when it forms.
    HAZARD_CHLORINE = "hazard_chlorine";
    /// The gold salt's; cobalt or nickel in it sensitise.
    HAZARD_GOLD_SALT = "hazard_gold_salt";
    /// Ammonia's too.
    HAZARD_AMMONIA = "hazard_ammonia";

    // Where it may be used.
    /// A trained adult, good ventilation and a waste plan.
    HOME_CONDITIONS = "home_conditions";
    /// Trained people only: it holds a gold cyanide salt.
    HOME_TRAINED_ONLY = "home_trained_only";
    /// The acid is stronger.
    HOME_STRONGER_ACID = "home_stronger_acid";
    /// A shop only.
    HOME_SHOP = "home_shop";
    /// A ventilated shop with trained people: nickel sensitises, harms by breathing and the unborn.
    HOME_NICKEL_SHOP = "home_nickel_shop";
    /// A shop only, once nickel silver has been etched in it.
    HOME_NICKEL_SILVER_SHOP = "home_nickel_silver_shop";
    /// No class: silver nitrate.
    CLASS_NO_SILVER_NITRATE = "class_no_silver_nitrate";

    // Why it is never chosen.
    /// Cyanide with any acid is hydrogen cyanide.
    NEVER_CYANIDE = "never_cyanide";
    /// Chromium(VI).
    NEVER_CHROMIUM_6 = "never_chromium_6";
    /// Steel or stainless as anode gives off chromium(VI) and nickel.
    NEVER_STEEL_ANODE = "never_steel_anode";

    // What it suits.
    /// Objects with a conductive coat.
    SUITS_COATED = "suits_coated";
    /// Coats that dislike acid, sealed.
    SUITS_ACID_SHY_COATS = "suits_acid_shy_coats";
    /// Copper.
    SUITS_COPPER = "suits_copper";
    /// Brass.
    SUITS_BRASS = "suits_brass";
    /// Bronze.
    SUITS_BRONZE = "suits_bronze";
    /// Copper alloys without a strike.
    SUITS_COPPER_ALLOYS = "suits_copper_alloys";
    /// Copper alloys that hold silver.
    SUITS_SILVER_BEARING_COPPER = "suits_silver_bearing_copper";
    /// Nickel silver.
    SUITS_NICKEL_SILVER = "suits_nickel_silver";
    /// Nickel.
    SUITS_NICKEL = "suits_nickel";
    /// Nickel, made active first.
    SUITS_NICKEL_ACTIVATED = "suits_nickel_activated";
    /// Bright nickel.
    SUITS_BRIGHT_NICKEL = "suits_bright_nickel";
    /// Palladium.
    SUITS_PALLADIUM = "suits_palladium";
    /// Silver.
    SUITS_SILVER = "suits_silver";
    /// Silver, by way of a strike.
    SUITS_SILVER_STRUCK = "suits_silver_struck";
    /// Silver over a barrier only.
    SUITS_SILVER_OVER_BARRIER = "suits_silver_over_barrier";
    /// Fine silver.
    SUITS_FINE_SILVER = "suits_fine_silver";
    /// Sterling.
    SUITS_STERLING = "suits_sterling";
    /// Gold.
    SUITS_GOLD = "suits_gold";
    /// White gold.
    SUITS_WHITE_GOLD = "suits_white_gold";
    /// Steel.
    SUITS_STEEL = "suits_steel";
    /// Steel, with this bath's own strike.
    SUITS_STEEL_STRUCK = "suits_steel_struck";
    /// Steel findings before acid copper.
    SUITS_STEEL_FINDINGS = "suits_steel_findings";
    /// Stainless.
    SUITS_STAINLESS = "suits_stainless";
    /// Nickel that has gone passive.
    SUITS_PASSIVE_NICKEL = "suits_passive_nickel";
    /// Zinc.
    SUITS_ZINC = "suits_zinc";
    /// Deep cups, feathers, filigree, many recesses.
    SUITS_RECESSES = "suits_recesses";
    /// Plain convex shapes.
    SUITS_PLAIN_CONVEX = "suits_plain_convex";
    /// Shells of low stress.
    SUITS_LOW_STRESS = "suits_low_stress";
    /// A barrier without pure nickel.
    SUITS_BARRIER = "suits_barrier";

    // Rules.
    /// Not directly on steel, zinc, aluminium, tin, pewter, lead solder: displaced copper peels. Strike first.
    RULE_LESS_NOBLE_BASE = "rule_less_noble_base";
    /// Poor throw into recesses.
    RULE_POOR_THROW = "rule_poor_throw";
    /// Kinds with thiourea: a suspected carcinogen, avoid.
    RULE_NO_THIOUREA = "rule_no_thiourea";
    /// A dilute strike first on steel.
    RULE_DILUTE_STRIKE_ON_STEEL = "rule_dilute_strike_on_steel";
    /// Zinc needs a cyanide strike: send it out.
    RULE_ZINC_SEND_OUT = "rule_zinc_send_out";
    /// Current on before the piece enters.
    RULE_LIVE_ENTRY = "rule_live_entry";
    /// Industry only.
    RULE_INDUSTRY_ONLY = "rule_industry_only";
    /// Make the surface active first.
    RULE_ACTIVATE = "rule_activate";
    /// A barrier under gold.
    RULE_BARRIER_FOR_GOLD = "rule_barrier_for_gold";
    /// The law on nickel released to skin.
    RULE_NICKEL_RELEASE = "rule_nickel_release";
    /// Sulfamate breaks down above about 60 C.
    RULE_SULFAMATE_HEAT = "rule_sulfamate_heat";
    /// One to three minutes.
    RULE_MINUTES_1_TO_3 = "rule_minutes_1_to_3";
    /// A silver strike first, always: silver displaces on copper and peels.
    RULE_SILVER_STRIKE = "rule_silver_strike";
    /// Below pH 7.5 the complex breaks down for good.
    RULE_PH_FLOOR = "rule_ph_floor";
    /// Strike first on nickel and leaded brass.
    RULE_STRIKE_ON_NICKEL = "rule_strike_on_nickel";
    /// Colour only.
    RULE_COLOUR_ONLY = "rule_colour_only";
    /// Nickel or palladium under gold on copper.
    RULE_BARRIER_UNDER_GOLD = "rule_barrier_under_gold";
    /// Strike first.
    RULE_STRIKE_FIRST = "rule_strike_first";
    /// Under pH 7.5 it gives off sulfur dioxide.
    RULE_SO2_BELOW_PH = "rule_so2_below_ph";
    /// Not on bare silver or copper: the acid attacks them and they poison the bath.
    RULE_NOT_ON_BARE_COPPER_SILVER = "rule_not_on_bare_copper_silver";
    /// Copper displaces and poisons: strike first.
    RULE_COPPER_POISONS = "rule_copper_poisons";
    /// Chlorine where the anode does not dissolve.
    RULE_CHLORINE_INERT_ANODE = "rule_chlorine_inert_anode";
    /// 80 to 20 by mass is assumed.
    RULE_ALLOY_ASSUMED = "rule_alloy_assumed";
    /// It still releases nickel.
    RULE_STILL_NICKEL = "rule_still_nickel";
    /// Bronze does not stop copper entering gold.
    RULE_BRONZE_NO_BARRIER = "rule_bronze_no_barrier";
    /// Its composition changes the equivalent: weigh a test strip.
    RULE_WEIGH_STRIP = "rule_weigh_strip";
    /// Not for a studio.
    RULE_NOT_FOR_STUDIO = "rule_not_for_studio";
    /// Back and edges masked.
    RULE_MASK_BACK = "rule_mask_back";
    /// The bath loses 0.29 g of copper per gram of 70/30 brass.
    RULE_BRASS_TAKES_COPPER = "rule_brass_takes_copper";
    /// Lead in free-cutting brass leaves black smut.
    RULE_LEAD_SMUT = "rule_lead_smut";
    /// Tin leaves white sludge.
    RULE_TIN_SLUDGE = "rule_tin_sludge";
    /// Nickel silver puts 0.18 g of nickel per gram into the bath: a shop set up for nickel only.
    RULE_NICKEL_SILVER_BATH = "rule_nickel_silver_bath";
    /// Nitrate is partly reduced at the cathode: nitrite, ammonium, the pH rises.
    RULE_NITRATE_REDUCED = "rule_nitrate_reduced";
    /// The bath loses 0.255 g of silver per gram of sterling.
    RULE_STERLING_TAKES_SILVER = "rule_sterling_takes_silver";
    /// Silver crystals fall and short the cell.
    RULE_CRYSTALS_SHORT = "rule_crystals_short";
    /// No chloride, tap water included.
    RULE_NO_CHLORIDE = "rule_no_chloride";
    /// Blue hydroxide sludge, the pH rises.
    RULE_HYDROXIDE_SLUDGE = "rule_hydroxide_sludge";
    /// Ammonia and nitrite form at the cathode: ventilate.
    RULE_AMMONIA_FORMS = "rule_ammonia_forms";
    /// Silver mud with ammonia can turn explosive on standing.
    RULE_SILVER_MUD = "rule_silver_mud";
    /// A stainless work piece would give chromate: forbidden.
    RULE_NO_STAINLESS_WORK = "rule_no_stainless_work";
    /// 0.456 L of hydrogen per Ah until copper builds up: ventilate.
    RULE_HYDROGEN_AT_FIRST = "rule_hydrogen_at_first";
    /// Chlorine at an anode that is inert or passive.
    RULE_CHLORINE_PASSIVE_ANODE = "rule_chlorine_passive_anode";
    /// Poor lines, sludge.
    RULE_POOR_LINES = "rule_poor_lines";
    /// Brown fume, 13 ppm is dangerous at once, the harm comes hours later.
    RULE_BROWN_FUME = "rule_brown_fume";
    /// Under 1 um: hydrogen cracks it.
    RULE_HYDROGEN_CRACKS = "rule_hydrogen_cracks";
    /// It tarnishes copper alloys.
    RULE_TARNISHES_COPPER = "rule_tarnishes_copper";
    /// Caustic.
    RULE_CAUSTIC = "rule_caustic";
    /// An inert anode in ammonium chloride may give chloramine: a hood, or better the sulfamate kind.
    RULE_CHLORAMINE = "rule_chloramine";
    /// Copper, and only as a warning.
    RULE_COPPER_ONLY = "rule_copper_only";

    // Never together.
    /// Bleach.
    MIX_BLEACH = "mix_bleach";
    /// Cyanide.
    MIX_CYANIDE = "mix_cyanide";
    /// Bases in bulk.
    MIX_BASES = "mix_bases";
    /// Aluminium.
    MIX_ALUMINIUM = "mix_aluminium";
    /// Acids: the complex is lost.
    MIX_ACID_COMPLEX = "mix_acid_complex";
    /// Strong acid.
    MIX_STRONG_ACID = "mix_strong_acid";
    /// Bleach with the ammonia in it: chloramine.
    MIX_BLEACH_AMMONIA = "mix_bleach_ammonia";
    /// Silver salts with the ammonia in it.
    MIX_SILVER_SALTS = "mix_silver_salts";
    /// Any acid: hydrogen cyanide.
    MIX_ACID_CYANIDE = "mix_acid_cyanide";
    /// Strong acid below pH 3: hydrogen cyanide.
    MIX_ACID_BELOW_PH_3 = "mix_acid_below_ph_3";
    /// Acid: sulfur dioxide.
    MIX_ACID_SO2 = "mix_acid_so2";
    /// Acid: brown fume.
    MIX_ACID_NO2 = "mix_acid_no2";
    /// Peroxide in bulk.
    MIX_PEROXIDE = "mix_peroxide";
    /// Strong light.
    MIX_STRONG_LIGHT = "mix_strong_light";
    /// Base metals.
    MIX_BASE_METALS = "mix_base_metals";
    /// Chloride with an inert anode.
    MIX_CHLORIDE_INERT_ANODE = "mix_chloride_inert_anode";
    /// Organic matter, dry.
    MIX_ORGANICS_DRY = "mix_organics_dry";
    /// Organic matter, alcohol.
    MIX_ORGANICS = "mix_organics";
    /// Strong reducers.
    MIX_REDUCERS = "mix_reducers";
    /// Ammonia: explosive silver.
    MIX_AMMONIA_EXPLOSIVE = "mix_ammonia_explosive";
    /// Alcohol: explosive silver.
    MIX_ETHANOL_EXPLOSIVE = "mix_ethanol_explosive";
    /// Acetylene: explosive silver.
    MIX_ACETYLENE_EXPLOSIVE = "mix_acetylene_explosive";
    /// Chloride.
    MIX_CHLORIDE = "mix_chloride";
    /// Ammonia.
    MIX_AMMONIA = "mix_ammonia";
    /// Any inert anode.
    MIX_INERT_ANODE = "mix_inert_anode";

    // Waste.
    /// Collect; recover the metal or a licensed handler; never the drain.
    WASTE_COLLECT = "waste_collect";
    /// A licensed handler.
    WASTE_LICENSED = "waste_licensed";
    /// A refiner.
    WASTE_REFINER = "waste_refiner";
    /// Recover the silver, then a licensed handler.
    WASTE_SILVER = "waste_silver";
    /// Silver: keep acid, never with ammonia.
    WASTE_SILVER_ACID = "waste_silver_acid";
    /// Neutralise only if trained; copper out on clean scrap steel, never aluminium; sludge to a licensed handler.
    WASTE_COPPER_ETCH = "waste_copper_etch";
    /// Do not let it dry on paper or cloth.
    WASTE_OXIDISER = "waste_oxidiser";
    /// Sludge and liquid to a licensed handler; no acid, no scrap aluminium.
    WASTE_SLUDGE = "waste_sludge";

    // What may touch what.
    /// Clean, then an acid dip.
    TOUCH_CLEAN_DIP = "touch_clean_dip";
    /// Clean.
    TOUCH_CLEAN = "touch_clean";
    /// A strike or live entry, else a displaced film peels.
    TOUCH_DISPLACED_FILM = "touch_displaced_film";
    /// Nickel or palladium below: copper migrates.
    TOUCH_COPPER_MIGRATES = "touch_copper_migrates";
    /// Nickel or palladium below.
    TOUCH_BARRIER_BELOW = "touch_barrier_below";
    /// Thin gold darkens: copper or silver migrates; palladium or nickel below for long wear.
    TOUCH_THIN_GOLD_DARKENS = "touch_thin_gold_darkens";
    /// Bare silver tarnishes through: palladium or nickel below.
    TOUCH_TARNISHES_THROUGH = "touch_tarnishes_through";
    /// Displacement copper, poor adhesion.
    TOUCH_DISPLACEMENT_COPPER = "touch_displacement_copper";
    /// This is its strike.
    TOUCH_IS_THE_STRIKE = "touch_is_the_strike";
    /// Not on this metal without layers between.
    TOUCH_NOT_DIRECTLY = "touch_not_directly";
    /// It dissolves.
    TOUCH_DISSOLVES = "touch_dissolves";
    /// Careful pyrophosphate, cyanide in industry: send it out.
    TOUCH_SEND_OUT_ZINC = "touch_send_out_zinc";
    /// Zincate first: not here.
    TOUCH_ZINCATE = "touch_zincate";
    /// A chloride nickel strike first: send it out.
    TOUCH_CHLORIDE_NICKEL_FIRST = "touch_chloride_nickel_first";
    /// Make it active again.
    TOUCH_REACTIVATE = "touch_reactivate";
    /// If it is active.
    TOUCH_IF_ACTIVE = "touch_if_active";
    /// If the coat is good.
    TOUCH_IF_COAT_GOOD = "touch_if_coat_good";
    /// Stress cracks on a coat: copper first.
    TOUCH_STRESS_CRACKS = "touch_stress_cracks";
    /// Silver paint lifts in cyanide and ammonia: copper first.
    TOUCH_SILVER_PAINT_LIFTS = "touch_silver_paint_lifts";
    /// After copper.
    TOUCH_AFTER_COPPER = "touch_after_copper";
    /// A citrate copper strike first.
    TOUCH_CITRATE_FIRST = "touch_citrate_first";
    /// A gold flash first.
    TOUCH_GOLD_FLASH_FIRST = "touch_gold_flash_first";
    /// First choice for etching this metal.
    TOUCH_ETCH_FIRST_CHOICE = "touch_etch_first_choice";
    /// Second choice.
    TOUCH_ETCH_SECOND_CHOICE = "touch_etch_second_choice";
    /// Tin leaves white sludge: brush it.
    TOUCH_ETCH_TIN_SLUDGE = "touch_etch_tin_sludge";
    /// Only in a shop set up for nickel.
    TOUCH_ETCH_NICKEL_SHOP = "touch_etch_nickel_shop";
    /// Oxide mud, and ammonia from the cathode: explosive.
    TOUCH_ETCH_SILVER_MUD = "touch_etch_silver_mud";
    /// The chloride seals the surface.
    TOUCH_ETCH_CHLORIDE_SEALS = "touch_etch_chloride_seals";
    /// Chlorine, poor lines.
    TOUCH_ETCH_CHLORIDE = "touch_etch_chloride";
    /// Brown fume.
    TOUCH_ETCH_FUME = "touch_etch_fume";
    /// No etch of this metal here: the wrong chemistry, or poison from it.
    TOUCH_ETCH_NONE_HERE = "touch_etch_none_here";
    /// It plates the silver out and dissolves.
    TOUCH_ETCH_DISPLACES_SILVER = "touch_etch_displaces_silver";

    // On alloys.
    /// Gold does not dissolve as counted: no use as an etch rate.
    ALLOY_GOLD_DOES_NOT_ETCH = "alloy_gold_does_not_etch";
    /// Active at low density, beyond the passive state at high: two equivalents.
    ALLOY_STAINLESS_TWO_WAYS = "alloy_stainless_two_ways";
    /// It anodises: the equivalent is a bound from above.
    ALLOY_ANODISES = "alloy_anodises";
    /// Its composition moves with the density.
    ALLOY_MOVES_WITH_DENSITY = "alloy_moves_with_density";
}
