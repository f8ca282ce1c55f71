//! What the sheet says: nothing of nothing, measurements before reckoning, mends that mend.

use crate::bench::{inputs, seen, settings, sheet};
use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::pan::PanEntry;
use batterwright::baking::worksheet::{
    DiagnosisSheet, Inputs, at_heat_read, diagnosis, is_baked_otherwise, kind_of,
};

fn chance(sheet: &DiagnosisSheet, key: &str) -> f64 {
    let found = sheet.causes.iter().find(|cause| cause.key == key);
    found.map_or(0.0, |cause| cause.chance)
}

#[test]
fn nothing_seen_is_nothing_diagnosed() {
    let found = sheet(&inputs("yellow_layer", ""), &seen("", ""));
    assert!(found.causes.is_empty() && found.ruled_out.is_empty());
    assert!(found.said.contains("Tick what you see"), "{}", found.said);
}

/// Without a formula the tables alone speak, and no figure is claimed.
#[test]
fn without_a_formula_no_figure_speaks() {
    let found = sheet(&Inputs::of_text(""), &seen("sunken", ""));
    assert!(
        !found.causes.is_empty() && found.ruled_out.is_empty(),
        "{found:?}"
    );
}

#[test]
fn a_sign_that_is_not_known_is_said() {
    let found = sheet(&inputs("yellow_layer", ""), &seen("sunken,purple_rain", ""));
    assert_eq!(found.troubles.len(), 1);
    assert!(found.troubles[0].contains("purple_rain"));
}

/// A core that was cool speaks for a short bake, one that was warm rules it out, and none does neither.
#[test]
fn what_was_measured_speaks_and_what_was_not_is_silent() {
    let cake = inputs("yellow_layer", "");
    let [none, cool, warm] =
        ["", "core=82", "core=97"].map(|said| sheet(&cake, &seen("sunken", said)));
    assert!(chance(&cool, "underbaked") > 0.66, "{}", cool.said);
    assert!(
        (0.1..0.66).contains(&chance(&none, "underbaked")),
        "{}",
        none.said
    );
    assert!(
        warm.ruled_out
            .iter()
            .any(|out| out.0 == "Taken out too soon" && out.1.contains("97"))
    );
}

/// All of it in one deep tin, for the half hour of the recipe's two: the recipe's time rules nothing out there, and what heat flow
/// reckons (any figure well beyond) is what it is held against.
#[test]
fn in_another_pan_the_recipes_time_holds_no_more() {
    let own = inputs("yellow_layer", "");
    let mut deep = own.clone();
    deep.choices.shelf = vec![PanEntry {
        length: "20 cm".into(),
        depth: "10 cm".into(),
        ..PanEntry::default()
    }];
    let seen = seen("sunken,wet", "bake_minutes=30");
    let too_soon = "Taken out too soon";
    let rules_out = |found: &DiagnosisSheet| found.ruled_out.iter().any(|out| out.0 == too_soon);
    let settings = settings();
    let larder = Larder::of(Region::Uk).own;
    let of = |inputs, minutes| diagnosis(inputs, &settings, larder, &seen, minutes);
    assert!(rules_out(&of(&own, None)));
    let unknown = of(&deep, None);
    assert!(!rules_out(&unknown), "{:?}", unknown.ruled_out);
    let reckoned = of(&deep, Some([48.0, 55.0, 63.0]));
    assert!(chance(&reckoned, "underbaked") > chance(&unknown, "underbaked"));
    let first = &reckoned.causes[0];
    assert_eq!(first.key, "underbaked");
    let said = "It baked 30 minutes; heat flow reckons with 48 to 63.";
    assert!(
        first.evidence[0].0.starts_with(said),
        "{:?}",
        first.evidence
    );
}

/// An oven that a thermometer read is forecast at that heat.
#[test]
fn what_a_thermometer_read_is_the_heat_that_is_reckoned_with() {
    let read = seen("wet", "bake_minutes=30;oven=150").measured;
    let own = inputs("yellow_layer", "");
    assert!(is_baked_otherwise(&own, &read));
    assert!(!is_baked_otherwise(
        &own,
        &seen("wet", "bake_minutes=30").measured
    ));
    let baked = at_heat_read(own, &read, &settings());
    assert!(baked.choices.oven.setting.starts_with("150 C"));
}

/// A strip beats what is reckoned: the sound cake at pH 5 is too sour, whatever its formula says.
#[test]
fn a_strip_beats_the_reckoning() {
    let cake = inputs("plant_chocolate", "");
    assert!(chance(&sheet(&cake, &seen("sour", "crumb_ph=5")), "crumb_acid") > 0.9);
    let sound = sheet(&cake, &seen("sour", "crumb_ph=7.4"));
    assert!(
        sound.ruled_out.iter().any(|out| out.0 == "Crumb too sour"),
        "{sound:?}"
    );
}

/// 32 mm in the middle of 45 at the edge is sunken, though nobody ticked it.
#[test]
fn heights_are_a_sign_by_themselves() {
    let found = sheet(
        &inputs("yellow_layer", ""),
        &seen("", "height_centre=32;height_edge=45;core=82"),
    );
    assert!(chance(&found, "underbaked") > 0.66, "{}", found.said);
}

#[test]
fn a_measurement_that_cannot_be_is_left_aside_with_a_sentence() {
    let found = sheet(
        &inputs("yellow_layer", ""),
        &seen("sunken", "crumb_ph=14;core=900;waited=-3"),
    );
    assert_eq!(found.troubles.len(), 3, "{:?}", found.troubles);
}

/// What mends the first cause, carried out, makes it the first no more: sugar doubled, fat, flour, powder, salt, soda.
#[test]
fn a_mend_carried_out_mends() {
    for (sound, change, signs, key) in [
        (
            "yellow_layer",
            "300 g caster sugar => 480 g caster sugar",
            "sunken",
            "sugar_much",
        ),
        (
            "yellow_layer",
            "150 g butter => 40 g butter",
            "tough",
            "fat_little",
        ),
        (
            "yellow_layer",
            "300 g cake flour => 500 g cake flour",
            "tough",
            "flour_much",
        ),
        (
            "yellow_layer",
            "13.5 g baking powder => 3 g baking powder",
            "low",
            "gas_little",
        ),
        (
            "yellow_layer",
            "13.5 g baking powder => 42 g baking powder",
            "coarse",
            "gas_much",
        ),
        ("yellow_layer", "4.5 g salt =>", "bland", "salt_little"),
        (
            "plant_chocolate",
            "6 g baking soda => 18 g baking soda",
            "soapy",
            "crumb_alkaline",
        ),
    ] {
        let cake = inputs(sound, change);
        let before = sheet(&cake, &seen(signs, ""));
        let first = &before.causes[0];
        assert_eq!(first.key, key);
        let remedy = first
            .remedies
            .first()
            .unwrap_or_else(|| panic!("no mend of {key}"));
        let after = sheet(&cake.with_remedy(remedy), &seen(signs, ""));
        assert!(
            chance(&after, key) < first.chance / 3.0,
            "{key}: {} to {} by {}",
            first.chance,
            chance(&after, key),
            remedy.label
        );
    }
}

/// Two causes that nothing tells apart are too close to call, with what would tell them.
#[test]
fn what_is_too_close_to_call_is_said_so() {
    let found = sheet(&inputs("yellow_layer", ""), &seen("lopsided", ""));
    assert!(
        found.said.starts_with("Too close to call"),
        "{}",
        found.said
    );
    assert_eq!(found.apart.len(), 2);
}

/// Signs that no one cause shows together fit nothing.
#[test]
fn when_nothing_fits_it_is_said() {
    let found = sheet(
        &inputs("yellow_layer", ""),
        &seen("ammonia_smell,sticks,white_spots,cocoa_pale,mushroomed", ""),
    );
    assert!(
        found.said.starts_with("Nothing that is known here fits"),
        "{}",
        found.said
    );
}

/// A layer cake with far too much sugar looks like a high-ratio one. Held against its control, of which the kind is recognised,
/// it is still a layer cake.
#[test]
fn the_control_tells_what_kind_was_meant() {
    let said = inputs("yellow_layer", "");
    let mut control = said.clone();
    control.choices.kind = None;
    let settings = settings();
    let own = Larder::of(Region::Uk).own;
    assert_eq!(kind_of(&control, &settings, own), said.choices.kind);
    assert_eq!(
        kind_of(&Inputs::of_text("Some words"), &settings, own),
        None
    );
}
