//! A pan cut through its middle with the batter in it, to scale.

use crate::baking::pan::Section;
use crate::baking::worksheet::PanView;
use leptos::prelude::*;

/// The drawing of a pan; its words stand beside it.
#[component]
pub fn PanDrawing(
    /// The pan as the worksheet has it.
    view: Memo<Option<PanView>>,
    /// Width of the widest pan on the page, millimetres.
    widest: Memo<f64>,
) -> impl IntoView {
    move || {
        let (section, fill) = view.with(|view| {
            view.as_ref().and_then(|view| {
                view.section
                    .map(|section| (section, view.fill_shown.clone()))
            })
        })?;
        Some(drawing(section, fill.unwrap_or_default(), widest.get()))
    }
}

fn drawing(section: Section, fill: String, widest: f64) -> AnyView {
    let Section {
        top,
        base,
        depth,
        tube_top,
        tube_base,
        batter,
        count,
    } = section;
    let wide = widest.max(1.0) * 1.12;
    let batter = batter.unwrap_or(0.0);
    let air = (batter - depth).max(0.0) + depth * 0.25;
    let (high, middle) = (depth + air + 8.0, wide / 2.0);
    let floor = air + depth;
    // Half the width at a height above the base.
    let half = |height: f64, base: f64, top: f64| {
        (base + (top - base) * if depth > 0.0 { height / depth } else { 0.0 }) / 2.0
    };
    let level = batter.min(depth);
    let side = |sign: f64, height: f64| {
        format!(
            "M{:.1} {floor:.1} L{:.1} {floor:.1} L{:.1} {:.1} L{:.1} {:.1} Z",
            middle + sign * tube_base / 2.0,
            middle + sign * base / 2.0,
            middle + sign * half(height, base, top),
            floor - height,
            middle + sign * half(height, tube_base, tube_top),
            floor - height,
        )
    };
    let wall = |sign: f64| {
        format!(
            "M{:.1} {floor:.1} L{:.1} {air:.1}",
            middle + sign * base / 2.0,
            middle + sign * top / 2.0
        )
    };
    let tube = |sign: f64| {
        format!(
            "M{:.1} {floor:.1} L{:.1} {air:.1}",
            middle + sign * tube_base / 2.0,
            middle + sign * tube_top / 2.0
        )
    };
    let bottom = format!(
        "M{:.1} {floor:.1} H{:.1}",
        middle - base / 2.0,
        middle + base / 2.0
    );
    let walls = [
        bottom,
        wall(-1.0),
        wall(1.0),
        if tube_base > 0.0 {
            format!("{} {}", tube(-1.0), tube(1.0))
        } else {
            String::new()
        },
    ]
    .join(" ");
    let over = (batter > depth).then(|| view! {
        <line class="pan__over" x1=middle - top / 2.0 x2=middle + top / 2.0 y1=floor - batter y2=floor - batter />
    });
    let note = if count > 1 {
        format!("{count} of these, {fill}")
    } else {
        fill
    };
    view! {
        <figure class="drawing">
            <svg class="pan" viewBox=format!("0 0 {wide:.1} {high:.1}") aria-hidden="true">
                <path class="pan__batter" d=format!("{} {}", side(-1.0, level), side(1.0, level)) />
                <path class="pan__wall" d=walls />
                {over}
            </svg>
            <figcaption class="drawing__words">{note}</figcaption>
        </figure>
    }
    .into_any()
}
