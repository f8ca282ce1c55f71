//! The reckoning backwards: leavening worked out from the crumb and the lift that are wished for.

use batterwright::baking::finding::{Edit, VerdictKind};
use batterwright::baking::ingredient::{Larder, Region, by_key};
use batterwright::baking::leaven::{Cupboard, GivesWay, POWDERS, Per, Tang, WishEntry};
use batterwright::baking::worksheet::{
    Inputs, LeaveningPlan, Settings, Worksheet, leavening_plan, worksheet,
};

/// A yellow layer cake by the usual baker's percentages (common practice, no source): powder 5 % of the flour.
const YELLOW: &str = "Yellow cake\n250 g cake flour\n250 g sugar\n125 g butter\n125 g egg\n190 g whole milk\n12.5 g baking powder\n4 g salt";
/// The same with lemon juice in the place of most of the milk: about 6 % citric acid, far more than the powder answers.
const LEMON: &str = "Lemon cake\n250 g cake flour\n250 g sugar\n125 g butter\n125 g egg\n80 g whole milk\n110 g lemon juice\n12.5 g baking powder\n4 g salt";

fn inputs(text: &str, wish: WishEntry) -> Inputs {
    let mut inputs = Inputs::of_text(text);
    inputs.choices.leavening = wish;
    inputs
}

fn try_plan(text: &str, wish: WishEntry) -> Result<LeaveningPlan, String> {
    let settings = Settings::default();
    let own = Larder::of(settings.region).own;
    leavening_plan(&inputs(text, wish), &settings, own)
}

#[track_caller]
fn plan(text: &str, wish: WishEntry) -> LeaveningPlan {
    try_plan(text, wish).expect("leavening that can be worked out")
}

/// The worksheet once a plan is carried out.
fn carried_out(text: &str, plan: &LeaveningPlan) -> Worksheet {
    let inputs = Inputs::of_text(text);
    let after = match &plan.answer.remedy {
        Some(remedy) => inputs.with_remedy(remedy),
        None => inputs,
    };
    worksheet(&after, &Settings::default())
}

#[track_caller]
fn grams(plan: &LeaveningPlan, name: &str) -> f64 {
    let doses = &plan.answer.doses;
    doses
        .iter()
        .find(|dose| dose.name.contains(name))
        .map_or(0.0, |dose| dose.grams)
}

fn only(cupboard: Cupboard) -> WishEntry {
    WishEntry {
        cupboard,
        ..WishEntry::default()
    }
}

fn wishes() -> Vec<WishEntry> {
    let mut wishes = vec![WishEntry::default()];
    for tang in Tang::ALL {
        for mask in 0..16_u8 {
            wishes.push(WishEntry {
                tang,
                cupboard: Cupboard {
                    soda: mask & 1 > 0,
                    powder: mask & 2 > 0,
                    tartar: mask & 4 > 0,
                    potassium: mask & 8 > 0,
                    powder_kind: (mask % 3 == 0).then(|| "baking_powder_tartrate".to_owned()),
                },
                sodium: if mask % 5 == 0 { "150" } else { "" }.to_owned(),
                ..WishEntry::default()
            });
        }
    }
    wishes
}

/// By the trade's practice powder alone leavens a yellow cake: there is nothing to change.
#[test]
fn a_cake_that_is_well_is_left_alone() {
    let plan = plan(YELLOW, WishEntry::default());
    assert_eq!(plan.answer.remedy, None, "{:?}", plan.answer);
    assert_eq!(plan.answer.gives_way, []);
    assert_eq!(plan.answer.before, plan.answer.after);
}

/// By hand: 110 g lemon juice at 5 to 6 % citric acid (3 eq in 192 g) brings 86 to 103 meq, to which 7 to 9 g soda
/// answer in full; a crumb in the lower half of the band wants less, from 4 g. Soda gives gas, so powder goes down.
#[test]
fn a_sour_batter_gets_soda_and_less_powder() {
    let plan = plan(LEMON, WishEntry::default());
    let (soda, powder) = (grams(&plan, "soda"), grams(&plan, "powder"));
    assert!((4.0..=9.0).contains(&soda), "{soda} g soda");
    assert!(powder < 12.5, "{powder} g powder");
    assert_eq!(plan.answer.gives_way, []);
    let after = carried_out(LEMON, &plan).leavening;
    assert_eq!(
        after.verdict.kind,
        VerdictKind::Agreed,
        "{:?}",
        after.verdict
    );
    assert_eq!(after.gas_verdict.kind, VerdictKind::Agreed);
}

#[test]
fn the_demo_with_passion_fruit_falls_inside_its_band() {
    let text = batterwright::baking::demo::DEMOS[0].text;
    let plan = plan(text, WishEntry::default());
    assert!(grams(&plan, "soda") > 0.0);
    assert!(grams(&plan, "powder") < 11.5, "2 1/2 tsp of 4.6 g");
    assert_eq!(plan.answer.gives_way, [], "{:?}", plan.answer.sentences);
    let after = carried_out(text, &plan).leavening;
    let rule = after.rule.expect("a rule");
    assert!((rule.band_low..=rule.band_high).contains(&rule.crumb.mean));
}

/// What is promised is what the worksheet says once the amounts are in the recipe; and they lie on the scale's grid.
#[test]
fn what_is_said_holds_when_it_is_judged_again() {
    for text in [YELLOW, LEMON, batterwright::baking::demo::DEMOS[0].text] {
        for wish in wishes().into_iter().step_by(2) {
            let plan = plan(text, wish.clone());
            for dose in &plan.answer.doses {
                let tenths = dose.grams * 10.0;
                let on_the_grid = (tenths - tenths.round()).abs() < 1e-6;
                assert!(on_the_grid || dose.grams == dose.before, "{dose:?}");
            }
            let after = carried_out(text, &plan).leavening;
            let (rule, gas) = (after.rule.expect("a rule"), after.gas.expect("gas"));
            let said = plan.answer.after;
            assert!(
                (rule.crumb.mean - said.ph.mean.value()).abs() < 1e-6,
                "{wish:?}"
            );
            assert!(
                (rule.crumb.low - said.ph.low.value()).abs() < 1e-6,
                "{wish:?}"
            );
            assert!(
                (gas.percent.mean - said.gas.mean.to_percent()).abs() < 1e-6,
                "{wish:?}"
            );
        }
    }
}

#[test]
fn only_what_is_in_the_cupboard_is_used() {
    for wish in wishes() {
        let plan = plan(LEMON, wish.clone());
        let there = &wish.cupboard;
        for (name, there) in [
            ("baking soda", there.soda),
            ("baking powder", there.powder),
            ("cream of tartar", there.tartar),
            ("potassium bicarbonate", there.potassium),
        ] {
            let used = plan
                .answer
                .doses
                .iter()
                .any(|dose| dose.name.ends_with(name) && dose.grams > 0.0);
            assert!(there || !used, "{name}: {:?}", plan.answer.doses);
        }
    }
}

/// Powder answers its own acid and hardly another: with nothing else, no amount of it takes this lemon up.
#[test]
fn with_powder_alone_the_ph_of_a_sour_batter_gives_way() {
    let plan = plan(
        LEMON,
        only(Cupboard {
            soda: false,
            ..Cupboard::default()
        }),
    );
    assert!(
        plan.answer.gives_way.contains(&GivesWay::Ph),
        "{:?}",
        plan.answer
    );
    assert!(!plan.answer.gives_way.contains(&GivesWay::Gas));
    assert!(
        plan.answer
            .sentences
            .iter()
            .any(|it| it.starts_with("The pH gives way"))
    );
}

/// With an empty cupboard there is no gas.
#[test]
fn with_nothing_the_gas_gives_way() {
    let plan = plan(
        YELLOW,
        only(Cupboard {
            soda: false,
            powder: false,
            ..Cupboard::default()
        }),
    );
    assert!(
        plan.answer.gives_way.contains(&GivesWay::Gas),
        "{:?}",
        plan.answer
    );
    assert_eq!(grams(&plan, "powder"), 0.0);
}

/// By hand: 4 g salt bring 1,550 mg and 12.5 g powder about 1,300 in 956 g of batter, 162 and 139 mg in 100 g; butter
/// (unsalted), egg and milk some 30 more. A limit of 230 leaves less than half of the powder's sodium.
#[test]
fn a_limit_of_sodium_is_kept_with_potassium() {
    let with = WishEntry {
        sodium: "230".into(),
        cupboard: Cupboard {
            potassium: true,
            tartar: true,
            ..Cupboard::default()
        },
        ..WishEntry::default()
    };
    let plan = plan(YELLOW, with);
    assert!(
        plan.answer.before.sodium > 230.0,
        "{:?}",
        plan.answer.before
    );
    assert!(plan.answer.after.sodium <= 230.0, "{:?}", plan.answer.after);
    assert!(grams(&plan, "potassium") > 0.0);
    assert_eq!(plan.answer.gives_way, [], "{:?}", plan.answer.sentences);
    let sodium = carried_out(YELLOW, &plan).balance;
    let batter = sodium.batter.expect("a batter").mean;
    let sodium = sodium
        .totals
        .iter()
        .find(|total| total.name == "Sodium")
        .expect("sodium");
    assert!(sodium.grams.mean / batter * 1e5 <= 230.0 + 1e-6);
}

/// The same for a serving: 956 g for eight are 120 g each, so that 276 mg in a serving are the 230 of above, and 230 in one
/// are less. Where nothing says how many it serves, that is said.
#[test]
fn a_limit_of_sodium_for_a_serving_is_kept() {
    let with = |sodium: &str| WishEntry {
        sodium: sodium.into(),
        sodium_per: Per::Serving,
        cupboard: Cupboard {
            potassium: true,
            tartar: true,
            ..Cupboard::default()
        },
        ..WishEntry::default()
    };
    let eight = format!("{YELLOW}\n\nServes 8");
    let in_serving = |limit: &str| {
        let after = plan(&eight, with(limit)).answer.after;
        (after.sodium_in_serving.expect("servings"), after.sodium)
    };
    let ((ample, _), (scant, of_scant)) = (in_serving("276"), in_serving("230"));
    assert!(ample <= 276.0 && scant <= 230.0, "{ample} {scant}");
    assert!(
        (of_scant * 9.56 / 8.0 - scant).abs() < 0.02 * scant,
        "{of_scant} {scant}"
    );
    assert!(
        ample > 230.0,
        "{ample}: no more is taken away than has to be"
    );
    let said = try_plan(YELLOW, with("230")).expect_err("no servings");
    assert!(said.contains("Serves 8"), "{said}");
}

/// Salt alone is over this limit: that is said, and the cake keeps its lift.
#[test]
fn a_limit_that_nothing_keeps_is_said() {
    let plan = plan(
        YELLOW,
        WishEntry {
            sodium: "0".into(),
            ..WishEntry::default()
        },
    );
    assert_eq!(plan.answer.gives_way, [GivesWay::Sodium]);
}

/// The sourer the wish, the lower the crumb; and a tang is not taken away.
#[test]
fn a_tang_is_kept() {
    let ph = |tang| {
        let wish = WishEntry {
            tang,
            ..WishEntry::default()
        };
        plan(LEMON, wish).answer.after.ph.mean.value()
    };
    let [usual, little, tangy] = Tang::ALL.map(ph);
    assert!(usual > little && little > tangy, "{usual} {little} {tangy}");
    // The band of a citrus cake begins at 5.4 and is 2.0 wide: its first quarter, and what lies up to 0.4 below it.
    assert!((5.3..=6.0).contains(&little), "{little}");
    assert!((4.9..=5.5).contains(&tangy), "{tangy}");
}

/// By hand: 7 to 8 g of soda that answer the lemon to pH 7 give 1.5 to 1.7 % of gas, and a third of the powder, kept for
/// the oven, 0.3 % more. So pH 7.0 with 1.9 % can be had, and with 1.3 % it cannot.
#[test]
fn a_ph_and_a_lift_of_ones_own_are_met() {
    let wished = |lift: &str| {
        let wish = WishEntry {
            ph: "7,0".into(),
            lift: lift.into(),
            ..WishEntry::default()
        };
        plan(LEMON, wish).answer
    };
    let found = wished("1.9");
    assert_eq!(found.gives_way, []);
    assert!((found.after.ph.mean.value() - 7.0).abs() < 0.16);
    assert!((found.after.gas.mean.to_percent() - 1.9).abs() < 0.2);
    assert_ne!(wished("1.3").gives_way, []);
    for (ph, lift) in [("sour", ""), ("2", ""), ("", "-1"), ("", "NaN")] {
        let wish = WishEntry {
            ph: ph.into(),
            lift: lift.into(),
            ..WishEntry::default()
        };
        let refused = leavening_plan(
            &inputs(LEMON, wish),
            &Settings::default(),
            Larder::of(Region::Us).own,
        );
        assert!(
            refused.is_err_and(|why| why.contains("write")),
            "{ph} {lift}"
        );
    }
}

#[test]
fn it_is_the_same_each_time() {
    for wish in wishes().into_iter().step_by(2) {
        assert_eq!(plan(LEMON, wish.clone()), plan(LEMON, wish));
    }
}

/// The words of each kind of powder are read as that kind, in every country.
#[test]
fn a_powder_is_read_by_its_name() {
    for region in Region::ALL {
        for key in POWDERS {
            let name = by_key(key).expect("a powder of the tables").name;
            let settings = Settings {
                region,
                ..Settings::default()
            };
            let sheet = worksheet(&Inputs::of_text(format!("Cake\n4.2 g {name}")), &settings);
            assert_eq!(sheet.lines[1].ingredient, Some(key), "{name}");
        }
    }
}

/// A kind of powder that is chosen takes the place of the recipe's.
#[test]
fn another_powder_takes_the_place_of_the_recipes_own() {
    let plan = plan(
        YELLOW,
        only(Cupboard {
            powder_kind: Some("baking_powder_tartrate".into()),
            ..Cupboard::default()
        }),
    );
    let remedy = plan.answer.remedy.as_ref().expect("a change");
    let gone = |edit: &Edit| matches!(edit, Edit::Weigh { line: 7, grams, .. } if *grams == 0.0);
    assert!(remedy.edits.iter().any(gone), "{:?}", remedy.edits);
    assert!(grams(&plan, "tartar") > 0.0);
}

#[test]
fn what_cannot_be_reckoned_says_why() {
    for (text, word) in [
        ("", "flour"),
        (
            "Cake\n200 g sugar\n5 g baking soda\n100 g lemon juice",
            "flour",
        ),
        ("Cake\nsome flour", "flour"),
    ] {
        let said = try_plan(text, WishEntry::default()).expect_err(text);
        assert!(said.contains(word), "{said}");
    }
    for limit in ["heavy", "-3", "1e999", "NaN", "99999999"] {
        let said = try_plan(
            YELLOW,
            WishEntry {
                sodium: limit.into(),
                ..WishEntry::default()
            },
        )
        .expect_err(limit);
        assert!(said.contains("limit"), "{said}");
    }
}

/// Extremes come to an end and say figures that are figures.
#[test]
fn nothing_is_too_odd_to_be_answered() {
    for text in [
        "1 g flour\n1 g water",
        "900000 g flour\n900000 g water\n900000 g lemon juice",
        "100 g flour",
        "100 g flour\n100 g baking soda\n100 g water",
        "100 g flour\n50 g oil\n3 g baking powder",
        "100 g flour\n2000 g vinegar",
        "100 g flour\n0 g baking soda\n100 ml water",
        "100 g self-raising flour\n1 tsp baker's ammonia\n100 ml milk",
    ] {
        for wish in wishes().into_iter().step_by(6) {
            if let Ok(plan) = try_plan(text, wish) {
                let after = plan.answer.after;
                for figure in [
                    after.ph.mean.value(),
                    after.gas.mean.to_percent(),
                    after.sodium,
                ] {
                    assert!(figure.is_finite(), "{text}: {after:?}");
                }
            }
        }
    }
}
