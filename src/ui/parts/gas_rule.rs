//! The gas as a drawing: what the batter makes against the band that its flour holds; and its words.

use super::ph_rule::{EDGE, WIDE, band, bar, captioned, frame, line, place, tick, words};
use crate::baking::quantity::show;
use crate::baking::worksheet::GasSheet;
use crate::ui::dom::Element;

/// The rule of gas.
pub fn gas_rule(gas: &GasSheet) -> Element {
    let x = |value| place(value, 0.0, gas.scale_high);
    // Half per cents, or wider steps where the scale is long, so that there are never more than six or so.
    let step = (gas.scale_high / 5.0).ceil().max(1.0) / 2.0;
    let steps = (gas.scale_high / step).floor() as u8;
    let ticks = (0..=steps).map(|count| f64::from(count) * step);
    let ticks = ticks.flat_map(|value| tick(x(value), show::fixed(value, 1)));
    let drawn = frame("hatch-gas")
        .child(band(x(gas.band_low), x(gas.band_high), 8.0, "hatch-gas"))
        .child(bar("rule__bar", EDGE, x(gas.percent.mean), 20.0, 16.0))
        .child(line(
            "rule__whisker",
            x(gas.percent.low),
            x(gas.percent.high),
            28.0,
        ))
        .child(line("rule__line", EDGE, WIDE - EDGE, 44.0))
        .children(ticks)
        .child(words(
            "rule__end rule__end--middle",
            WIDE / 2.0,
            "gas, per cent of the flour",
        ));
    captioned(
        drawn,
        &gas.words,
        "Hatched: what a batter of this flour wants.",
    )
}
