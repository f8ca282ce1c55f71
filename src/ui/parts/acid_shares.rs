//! Who brings acid and who brings base, line by line, with bars.

use crate::baking::worksheet::AcidShare;
use leptos::prelude::*;

/// The table of acid and base.
#[component]
pub fn AcidShares(
    /// What each line brings.
    shares: Memo<Vec<AcidShare>>,
) -> impl IntoView {
    let rows = move || {
        let largest = shares.with(|shares| {
            shares
                .iter()
                .map(|share| share.acid.mean.abs())
                .fold(0.0, f64::max)
        });
        shares
            .get()
            .into_iter()
            .map(|share| row(share, largest))
            .collect_view()
    };
    view! {
        <div hidden=move || shares.with(Vec::is_empty)>
            <table class="shares">
                <caption class="caption">"Acid and base by line, in milliequivalents (meq): one of acid answers one of soda"</caption>
                <thead>
                    <tr>
                        <th scope="col">"Ingredient"</th>
                        <th scope="col" class="shares__head--bar"><span class="unseen">"Drawn: acid to the left, base to the right"</span></th>
                        <th scope="col" class="shares__head--figure">"Brings"</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

fn row(share: AcidShare, largest: f64) -> impl IntoView {
    // Half of a bar is fifty units wide.
    let long = if largest > 0.0 {
        share.acid.mean.abs() / largest * 50.0
    } else {
        0.0
    };
    let acid = share.acid.mean >= 0.0;
    let (from, class) = if acid {
        (50.0 - long, "bar__acid")
    } else {
        (50.0, "bar__base")
    };
    view! {
        <tr class="shares__row">
            <th scope="row" class="shares__name">
                <details class="shares__details">
                    <summary class="shares__summary">{share.name}</summary>
                    <p class="shares__how">{share.how}</p>
                    <p class="shares__how"><a class="lines__link" href=format!("#/line/{}", share.line)>{format!("Line {}", share.line)}</a></p>
                </details>
            </th>
            <td class="shares__bar">
                <svg class="bar" viewBox="0 0 100 16" preserveAspectRatio="none" aria-hidden="true">
                    <line class="bar__middle" x1="50" x2="50" y1="0" y2="16" />
                    {(!share.unknown).then(|| view! { <rect class=class x=from width=long y="3" height="10" /> })}
                </svg>
            </td>
            <td class="shares__figure">{if share.unknown { "not known".to_owned() } else { share.shown }}</td>
        </tr>
    }
}
