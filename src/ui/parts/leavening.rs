//! Acid and gas: the verdicts, the two rules, who brings what, and what would mend it.

use super::acid_shares::AcidShares;
use super::findings::Finding;
use super::gas_rule::GasRule;
use super::ph_rule::PhRuleDrawing;
use super::section::{figure, section};
use super::verdict_strip::{look, mark};
use crate::baking::finding;
use crate::baking::worksheet::Verdict;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The part on acid, soda and gas.
#[component]
pub fn Leavening() -> impl IntoView {
    let bench = Bench::here();
    let sheet = Memo::new(move |_| bench.sheet.with(|sheet| sheet.leavening.clone()));
    let mends = Memo::new(move |_| {
        bench.sheet.with(|sheet| {
            sheet
                .findings
                .iter()
                .filter(|finding| about_leavening(finding))
                .cloned()
                .collect::<Vec<_>>()
        })
    });
    let body = view! {
        {move || sheet.with(|sheet| verdict(&sheet.verdict))}
        {move || sheet.with(|sheet| sheet.rule.clone()).map(|rule| view! { <PhRuleDrawing rule /> })}
        <div class="findings">
            {move || mends.get().into_iter().map(|finding| view! { <Finding finding heading=false /> }).collect_view()}
        </div>
        <AcidShares shares=Memo::new(move |_| sheet.with(|sheet| sheet.shares.clone())) />
        {move || sheet.with(|sheet| sheet.figures.clone()).into_iter().map(figure).collect_view()}
        <h3 class="part__sub" id="/gas">"Gas"</h3>
        {move || sheet.with(|sheet| verdict(&sheet.gas_verdict))}
        {move || sheet.with(|sheet| sheet.gas.clone()).map(|gas| view! { <GasRule gas /> })}
    };
    section("/acid", "Acid and gas", body.into_any())
}

/// Findings whose remedies belong beside the rules.
fn about_leavening(finding: &finding::Finding) -> bool {
    ["soda", "gas", "acid", "powder", "leaven", "crumb"]
        .iter()
        .any(|word| finding.name.contains(word))
}

fn verdict(verdict: &Verdict) -> AnyView {
    let Verdict {
        kind,
        title,
        sentence,
        sure,
    } = verdict.clone();
    view! {
        <div class=format!("verdict verdict--{}", look(kind))>
            <p class="verdict__title">
                <span class="verdict__mark" aria-hidden="true">{mark(kind)}</span>
                <strong>{title}</strong>
                " "
                <span class="verdict__sure">{sure}</span>
            </p>
            <p class="verdict__sentence">{sentence}</p>
        </div>
    }
    .into_any()
}
