//! scratch
use super::examples::{Example, examples};
use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::worksheet::{
    Choices, Inputs, Settings, SwapEntry, SwapLine, swap_plan, worksheet,
};

#[test]
fn scratch() {
    for example in examples() {
        let text = format!("Cake\n\nIngredients\n{}\n", example.recipe.join("\n"));
        let mut inputs = Inputs {
            choices: Choices {
                region: Some(example.region),
                ..Choices::default()
            },
            ..Inputs::of_text(text)
        };
        inputs.swap(
            (example.line + 3, 0),
            &example.to.join("+"),
            Some((example.replaced * 100.0) as u8),
        );
        let own = Larder::of(example.region).own;
        println!(
            "=== {} {:?} -> {:?}  [{}]",
            example.id, example.recipe, example.to, example.differs
        );
        println!("    source: {:?}", example.gives);
        match swap_plan(&inputs, &Settings::default(), own) {
            Err(why) => println!("  ERR {why}"),
            Ok(plan) => {
                for a in &plan.amounts {
                    println!(
                        "    {:24} {:10} {:>16} -> {}",
                        a.name, a.what, a.before, a.after
                    );
                }
                let b = worksheet(&inputs, &Settings::default());
                println!(
                    "    b {} {}",
                    b.leavening.gas_verdict.title, b.leavening.gas_verdict.sentence
                );
                for f in &plan.difference.findings_come {
                    println!("    + {} {}", f.name, f.sentence);
                }
                for s in &plan.sentences {
                    println!("    . {s}");
                }
                println!(
                    "    {:?}",
                    worksheet(&plan.after, &Settings::default())
                        .balance
                        .ranges
                        .kind
                );
            }
        }
    }
}
