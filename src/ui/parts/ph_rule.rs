//! The pH rule as a drawing: a scale, the band of this kind of cake, the crumb with its spread; and its words.

use crate::baking::worksheet::PhRule;
use leptos::prelude::*;

/// Width of the drawing, in its own units; one unit is a pixel on a narrow phone.
pub const WIDE: f64 = 320.0;
/// Room at either end, so that figures at the ends are not cut.
pub const EDGE: f64 = 12.0;

/// Where a value falls on a scale, in the drawing's units, kept within it.
pub fn place(value: f64, low: f64, high: f64) -> f64 {
    let share = if high > low {
        ((value - low) / (high - low)).clamp(0.0, 1.0)
    } else {
        0.0
    };
    EDGE + share * (WIDE - 2.0 * EDGE)
}

/// The rule of pH.
#[component]
pub fn PhRuleDrawing(
    /// What to draw.
    rule: PhRule,
) -> impl IntoView {
    let x = |value| place(value, rule.scale_low, rule.scale_high);
    let ticks = (rule.scale_low.ceil() as i32)..=(rule.scale_high.floor() as i32);
    let ticks = ticks.map(|tick| {
        let at = x(f64::from(tick));
        view! {
            <line class="rule__tick" x1=at x2=at y1="44" y2="52" />
            <text class="rule__figure" x=at y="66">{tick}</text>
        }
    });
    let mean = x(rule.crumb.mean);
    view! {
        <figure class="drawing">
            <svg class="rule" viewBox="0 0 320 84" aria-hidden="true">
                <Hatch id="hatch-ph" />
                <rect class="rule__band" x=x(rule.band_low) width=x(rule.band_high) - x(rule.band_low) y="14" height="30" fill="url(#hatch-ph)" />
                <line class="rule__line" x1=EDGE x2=WIDE - EDGE y1="44" y2="44" />
                {ticks.collect_view()}
                <rect class="rule__spread" x=x(rule.crumb.low) width=(x(rule.crumb.high) - x(rule.crumb.low)).max(1.0) y="25" height="8" />
                <path class="rule__mark" d=format!("M{mean:.1} 44 l-7 -16 h14 z") />
                <text class="rule__end" x=EDGE y="81">"sour"</text>
                <text class="rule__end rule__end--right" x=WIDE - EDGE y="81">"soapy"</text>
                <text class="rule__end rule__end--middle" x=WIDE / 2.0 y="81">"pH of the crumb"</text>
            </svg>
            <figcaption class="drawing__words">
                {rule.words}
                <span class="drawing__key">{format!("Hatched: the band for {}.", rule.band_for.trim_end_matches('.'))}</span>
            </figcaption>
        </figure>
    }
}

/// The hatching of bands, so that colour never stands alone.
#[component]
pub fn Hatch(
    /// The name that drawings fill with.
    id: &'static str,
) -> impl IntoView {
    view! {
        <defs>
            <pattern id=id width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <rect class="rule__ground" width="6" height="6" />
                <rect class="rule__hatch" width="2" height="6" />
            </pattern>
        </defs>
    }
}
