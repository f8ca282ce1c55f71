//! The gas as a drawing: what the batter makes against the band that its flour holds; and its words.

use super::ph_rule::{EDGE, Hatch, WIDE, place};
use crate::baking::worksheet::GasSheet;
use leptos::prelude::*;

/// The rule of gas.
#[component]
pub fn GasRule(
    /// What to draw.
    gas: GasSheet,
) -> impl IntoView {
    let x = |value| place(value, 0.0, gas.scale_high);
    // Four divisions, whatever the scale.
    let ticks = (0..=4).map(|part| {
        let value = gas.scale_high * f64::from(part) / 4.0;
        let at = x(value);
        view! {
            <line class="rule__tick" x1=at x2=at y1="44" y2="52" />
            <text class="rule__figure" x=at y="66">{format!("{value:.1}")}</text>
        }
    });
    view! {
        <figure class="drawing">
            <svg class="rule" viewBox="0 0 320 84" aria-hidden="true">
                <Hatch id="hatch-gas" />
                <rect class="rule__band" x=x(gas.band_low) width=x(gas.band_high) - x(gas.band_low) y="8" height="36" fill="url(#hatch-gas)" />
                <rect class="rule__bar" x=EDGE width=x(gas.percent.mean) - EDGE y="20" height="16" />
                <line class="rule__whisker" x1=x(gas.percent.low) x2=x(gas.percent.high) y1="28" y2="28" />
                <line class="rule__line" x1=EDGE x2=WIDE - EDGE y1="44" y2="44" />
                {ticks.collect_view()}
                <text class="rule__end rule__end--middle" x=WIDE / 2.0 y="81">"gas, per cent of the flour"</text>
            </svg>
            <figcaption class="drawing__words">
                {gas.words}
                <span class="drawing__key">"Hatched: what a batter of this flour wants."</span>
            </figcaption>
        </figure>
    }
}
