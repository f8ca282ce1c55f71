//! The pans as they are shown: how much of the recipe is baked, how it is shared out, how full they are.

use super::{Choices, EggOffer, EggSheet, LengthUnit, PanSheet, PanView};
use crate::baking::estimate::Estimate;
use crate::baking::finding::Facts;
use crate::baking::formula::Eggs;
use crate::baking::pan::{
    Fill, Fit, HowMuch, LeftOver, Level, Origin, Pan, PanEntry, Part, Shape, Split, WholeEggs,
    batter_of, sizes,
};
use crate::baking::quantity::{Length, Mass, Volume, show};
use crate::baking::source;

/// All pans, the amount, and all of it in words.
pub fn pan_sheet(facts: &Facts, choices: &Choices, unit: LengthUnit) -> PanSheet {
    let fit = facts.fit;
    let parts = fit.split.as_ref().map_or(&[][..], |split| &split.parts);
    let shelf = choices.shelf.iter().zip(&fit.shelf).enumerate();
    let shelf = shelf.map(|(place, (entry, pan))| View {
        pan: *pan,
        typed: Some(entry),
        part: parts.get(place),
        ..View::default()
    });
    let own = View {
        pan: fit.own,
        typed: choices.own_pan.as_ref(),
        from: from(fit),
        fill: fit.own_fill,
        ..View::default()
    };
    let own_again = choices.shelf.is_empty().then_some(()).and(parts.first());
    let own_again = own_again.map(|part| View {
        pan: fit.own,
        typed: choices.own_pan.as_ref(),
        part: Some(part),
        ..View::default()
    });
    PanSheet {
        own: own.shown(unit),
        shelf: shelf.map(|view| view.shown(unit)).collect(),
        own_again: own_again.map(|view| view.shown(unit)),
        amount: choices.amount.clone(),
        amount_trouble: fit.amount_trouble.clone(),
        factor: fit.factor,
        factor_shown: fit
            .factor
            .map(|factor| format!("{} times the recipe", show::factor(factor))),
        words: factor_words(fit, choices),
        shared_out: fit.split.as_ref().map(shared_out).unwrap_or_default(),
        eggs: egg_sheet(fit, unit),
        said: choices.batter.clone(),
        cup_trouble: choices.batter.density().err(),
        usual: usual(facts),
    }
}

/// A caution where something is baked in jars (usual advice of food safety services, from memory).
pub fn jar_caution(fit: &Fit) -> Option<String> {
    let mut pans = fit.shelf.iter().flatten().chain(&fit.own);
    pans.any(|pan| pan.shape == Shape::Jar).then(|| {
        "Jars may crack where heat or cold meets them fast: bake only in those that are made for the oven. Don't close warm cake in a jar to keep it: botulism can grow in it unseen."
            .to_owned()
    })
}

/// Where the recipe's own pan is from.
fn from(fit: &Fit) -> String {
    match fit.origin {
        Origin::Named { line, depth: true } => format!("Named in line {line}."),
        Origin::Named { line, depth: false } => {
            format!(
                "Named in line {line}, without its depth: the usual one is taken. Measure yours."
            )
        }
        Origin::Chosen => "Your choice.".to_owned(),
        Origin::Taken => {
            "The text names no pan. Say which it is, and another pan can be reckoned.".to_owned()
        }
    }
}

/// What the factor means, and what others would be.
fn factor_words(fit: &Fit, choices: &Choices) -> String {
    let (takes, other) = match choices.shelf.len() {
        1 => ("takes", "the other pan"),
        _ => ("take", "the pans on the shelf"),
    };
    if fit.amount_trouble.is_some() {
        return "Mend the amount, and the factor follows.".to_owned();
    }
    let Some(factor) = fit.factor else {
        return match (choices.shelf.as_slice(), &fit.origin) {
            ([], _) => "Choose another pan to scale the formula to it.",
            (_, Origin::Taken) => "Say which pan the recipe is for, and the factor follows.",
            _ => "Mend the pan sizes, and the factor follows.",
        }
        .to_owned();
    };
    let (full, deep) = (
        fit.full_factor.map(show::factor),
        fit.depth_factor.map(show::factor),
    );
    match (choices.amount.how, full, deep) {
        (HowMuch::AsFull, _, Some(deep)) => format!(
            "By volume {other} {takes} {} times the recipe, filled as high as the recipe's own. The same depth would take {deep} times.",
            show::factor(factor),
        ),
        (_, Some(full), Some(deep)) => format!(
            "So you asked. Filled as high as the recipe's own, {other} would take {full} times the recipe; the same depth would take {deep} times."
        ),
        _ => "So you asked.".to_owned(),
    }
}

/// How several pans are filled, and what is left over.
fn shared_out(split: &Split) -> Vec<String> {
    let level = (split.parts.len() > 1).then(|| level_words(split).to_owned());
    level
        .into_iter()
        .chain(split.left.as_ref().map(left_over))
        .collect()
}

/// What decides how high each pan is filled; a fill line or the highest fill may keep one below the others.
fn level_words(split: &Split) -> &'static str {
    let alike = |measure: fn(&Fill) -> f64| {
        let all = split.parts.iter().map(|part| measure(&part.fill));
        let (least, most) = all.fold((f64::INFINITY, 0.0_f64), |(least, most), one| {
            (least.min(one), most.max(one))
        });
        most <= least * 1.01
    };
    match split.level {
        Level::SameDepth if alike(|fill| fill.depth.mean.to_millimetres()) => {
            "The batter stands equally deep in all of them, so that they bake alike."
        }
        Level::SameDepth => {
            "The batter stands equally deep in all of them, as far as each takes so much."
        }
        Level::SameShare if alike(|fill| fill.share.mean.to_fraction()) => {
            "Their depths differ by more than a third, so each is filled to the same share of its depth: the deeper ones bake longer."
        }
        Level::SameShare => {
            "Their depths differ by more than a third, so each is filled to the same share of its depth, as far as it takes so much: the deeper ones bake longer."
        }
    }
}

fn left_over(left: &LeftOver) -> String {
    let cups = match left.cups.round() {
        cups if cups < 1.0 => "less than one standard muffin cup".to_owned(),
        1.0 => "about one standard muffin cup".to_owned(),
        cups => format!("about {} standard muffin cups", show::fixed(cups, 0)),
    };
    format!(
        "{} of batter is left over when they are filled as high as is usual: as much as fills {cups} as high.",
        with_range(&left.batter)
    )
}

/// A part of an egg, and what whole numbers come to.
fn egg_sheet(fit: &Fit, unit: LengthUnit) -> Option<EggSheet> {
    let (eggs, factor) = (fit.eggs?, fit.factor?);
    if fit.whole_eggs.is_empty() {
        return None;
    }
    let count = eggs.count * factor;
    let words = format!(
        "The formula asks for {} {} of {} each: beat {} and weigh {}.",
        show::factor(count),
        egg_words(&eggs, count),
        show::mass(eggs.each),
        show::fixed(count.ceil(), 0),
        show::mass(eggs.each * count),
    );
    let offers = fit.whole_eggs.iter();
    Some(EggSheet {
        words,
        offers: offers.map(|whole| egg_offer(&eggs, whole, unit)).collect(),
    })
}

fn egg_words(eggs: &Eggs, count: f64) -> String {
    let name = match eggs.ingredient.key {
        "egg" => "egg",
        _ => eggs.ingredient.name,
    };
    let ending = if count == 1.0 { "" } else { "s" };
    format!("{name}{ending}")
}

fn egg_offer(eggs: &Eggs, whole: &WholeEggs, unit: LengthUnit) -> EggOffer {
    let count = f64::from(whole.count);
    let stands: Vec<String> =
        whole
            .split
            .iter()
            .flat_map(|split| &split.parts)
            .fold(Vec::new(), |mut stands, part| {
                let unit = part.fill.pan.unit(unit);
                let words = format!(
                    "{} deep, {} of the depth",
                    length_both(part.fill.depth.mean, unit),
                    show::percent(part.fill.share.mean)
                );
                // Pans that stand alike are told once.
                if !stands.contains(&words) {
                    stands.push(words);
                }
                stands
            });
    let times = show::factor(whole.factor);
    let words = match stands.is_empty() {
        true => format!("{times} times the recipe."),
        false => format!(
            "{times} times the recipe; the batter stands {}.",
            stands.join(", and ")
        ),
    };
    EggOffer {
        count: whole.count,
        label: format!("Take {} {}", whole.count, egg_words(eggs, count)),
        words,
    }
}

/// How full pans of the kind usually are and what its batter weighs, each with its source.
fn usual(facts: &Facts) -> String {
    let row = batter_of(facts.kind);
    let fill = match row.fill {
        Some(fill) => format!(
            "Pans of {} are usually filled to {} to {} % of what they hold at the brim ({}).",
            facts.kind.words(),
            show::fixed(fill.low.to_percent(), 0),
            show::fixed(fill.high.to_percent(), 0),
            show::amid(&fill.cited.words()),
        ),
        None => format!("No usual fill is known for {}.", facts.kind.words()),
    };
    let density = facts.fit.density;
    let [low, mean, high] = [density.low, density.mean, density.high]
        .map(|it| show::plain(it.to_grams_per_millilitre()));
    let cited = show::amid(&row.density_cited.words());
    let how = match (facts.fit.is_measured, row.note) {
        (true, _) => "by your cup".to_owned(),
        (false, "") => cited,
        (false, note) => format!("{cited}; {note}"),
    };
    format!("{fill} A millilitre of batter is taken to weigh {mean} g ({low} to {high}): {how}.")
}

/// What is shown of one pan.
#[derive(Default)]
struct View<'a> {
    pan: Option<Pan>,
    typed: Option<&'a PanEntry>,
    from: String,
    /// The recipe's own batter in it.
    fill: Option<Fill>,
    /// Or its part of what is baked.
    part: Option<&'a Part>,
}

impl View<'_> {
    fn shown(self, asked: LengthUnit) -> PanView {
        let Self {
            pan, typed, part, ..
        } = self;
        let unit = match (typed, &pan) {
            (None, Some(pan)) => pan.unit(asked),
            (Some(entry), _) => entry.unit,
            (None, None) => asked,
        };
        let fill = part.map(|part| part.fill).or(self.fill);
        let label = pan.map_or_else(
            || "A pan that cannot be reckoned yet".to_owned(),
            |pan| pan.label(unit),
        );
        let brim_shown = pan.map_or_else(String::new, |pan| show::volume(pan.brim()));
        let depth_shown = fill.map(|fill| length_both(fill.depth.mean, unit));
        let fill_shown = fill.map(|fill| {
            format!(
                "{} of its depth ({} to {})",
                show::percent(fill.share.mean),
                show::percent(fill.share.low),
                show::percent(fill.share.high),
            )
        });
        let grams_shown = part.map(|part| with_range(&part.each));
        let mut words = vec![match pan {
            Some(_) => format!("{label}: holds {brim_shown} at the brim."),
            None => label.clone(),
        }];
        if let (Some(depth), Some(share)) = (&depth_shown, &fill_shown) {
            words.push(match &grams_shown {
                Some(grams) => {
                    let into = match pan {
                        Some(pan) if pan.count > 1 => "each",
                        _ => "it",
                    };
                    format!("Weigh {grams} of batter into {into}: it stands {depth} deep, {share}.")
                }
                None => format!("The batter stands {depth} deep, {share}."),
            });
        }
        words.extend(fill.as_ref().and_then(|fill| baked_words(fill, unit)));
        PanView {
            entry: typed
                .cloned()
                .or_else(|| pan.map(|pan| pan.entry(unit)))
                .unwrap_or_default(),
            from: self.from,
            known: pan.is_some(),
            troubles: typed
                .and_then(|entry| entry.read().err())
                .unwrap_or_default(),
            charts: pan.as_ref().map(charts).unwrap_or_default(),
            section: pan.map(|pan| pan.section(fill.as_ref())),
            words: words.join(" "),
            label,
            brim_shown,
            grams_shown,
            depth_shown,
            fill_shown,
        }
    }
}

/// What charts print for a pan of that size, beside geometry, and how many slices a tier of it is cut into.
fn charts(pan: &Pan) -> Vec<String> {
    let mut sentences = Vec::new();
    if let Some(size) = sizes().iter().find(|size| size.is(pan)) {
        let cups = |volumes: &[Volume]| {
            let cups = volumes.iter().map(|volume| *volume / Volume::US_CUP);
            let cups: Vec<String> = cups.map(show::plain).collect();
            format!("{} US cups", cups.join(" or "))
        };
        let ours = cups(&[size.pan.one().brim()]);
        let mut say = |key: &str, volumes: &[Volume], of: &str| {
            if let (Some(source), false) = (source::by_key(key), volumes.is_empty()) {
                sentences.push(format!(
                    "{of} one: {}, where geometry has {ours} at the brim ({}).",
                    cups(volumes),
                    show::amid(source.citation)
                ));
            }
        };
        say("pan_charts", &size.brims, "Printed for the brim of");
        say(
            "decorator_chart",
            size.batter.as_slice(),
            "Printed as batter for",
        );
        say("friberg_2003", size.textbook.as_slice(), "Printed for");
        if !size.note.is_empty() {
            sentences.push(format!("{}.", show::sentence(size.note)));
        }
    }
    sentences.extend(pan.slices().map(|slices| {
        format!(
            "Two layers of it, cut into slices of 1 by 2 inches, make {slices} (half its square inches, within two of wedding charts)."
        )
    }));
    sentences
}

fn baked_words(fill: &Fill, unit: LengthUnit) -> Option<String> {
    let baked = fill.baked?;
    Some(format!(
        "Baked it is expected to stand {} deep, {} of the pan's depth ({} to {}).",
        length_both(baked.depth.mean, unit),
        show::percent(baked.share.mean),
        show::percent(baked.share.low),
        show::percent(baked.share.high),
    ))
}

/// A weight with its range: "430 g (405 to 455 g)".
fn with_range(grams: &Estimate<Mass>) -> String {
    let mean = show::mass(grams.mean);
    match show::mass_range(grams) {
        Some(range) => format!("{mean} ({range})"),
        None => mean,
    }
}

/// A length in the baker's unit first, and the other beside it.
fn length_both(length: Length, unit: LengthUnit) -> String {
    let rounded = Length::millimetres((length.to_millimetres()).round());
    let inches = Length::inches((length.to_inches() * 10.0).round() / 10.0);
    let (centimetres, inches) = (
        show::length(rounded, LengthUnit::Centimetres),
        show::length(inches, LengthUnit::Inches),
    );
    match unit {
        LengthUnit::Inches => format!("{inches} ({centimetres})"),
        LengthUnit::Centimetres => format!("{centimetres} ({inches})"),
    }
}
