use batterwright::baking::saved::*;
use batterwright::baking::worksheet::*;
fn main() {
    let mut n = 0;
    let mut before = 0;
    let mut after = 0;
    let mut text = 0;
    let mut recs = vec![];
    for e in std::fs::read_dir("tests/verdicts").unwrap() {
        let p = e.unwrap().path();
        if p.extension().is_some_and(|x| x == "txt") {
            let t = std::fs::read_to_string(p).unwrap();
            let k = KeptRecipe {
                changed: 1764057600000,
                inputs: Inputs::of_text(t.clone()),
                version: None,
            };
            text += t.chars().count();
            before += serde_json::to_string(&k).unwrap().chars().count()
                + r#"{"format":"batterwright recipe","version":2,"body":}"#.len();
            after += to_text(&k).unwrap().chars().count();
            n += 1;
            recs.push(k);
        }
    }
    println!("{n} recipes: text {text}, before {before}, after {after}");
    let start = std::time::Instant::now();
    for _ in 0..20 {
        for k in &recs {
            std::hint::black_box(serde_json::to_string(k).unwrap());
        }
    }
    println!("before {:?} a record", start.elapsed() / (20 * n));
    let start = std::time::Instant::now();
    for _ in 0..20 {
        for k in &recs {
            std::hint::black_box(to_text(k).unwrap());
        }
    }
    println!("after {:?} a record", start.elapsed() / (20 * n));
}
