//! Two hundred invented cakes, each with a best amount that nobody knows, and two bakers who look for it.
//!
//! The one bakes what `next_bake` proposes. The other goes one step at a time, as a sensible baker does without it: he
//! starts at the amount that is reckoned to be best, as the first does, moves it by 10 % and bakes again; while it is better he
//! goes on, where it is worse he turns to the other side; when both sides are worse he halves the step, and when both
//! sides of 5 % are worse too he stops. He keeps what came out best and bakes no amount twice. That is fair to him: he has
//! the same start, finds as near as 5 % asks, and looks at each cake as closely. A second one like him starts with steps of
//! 20 %, for whom the way is shorter where the start is far off.
//!
//! The cakes: best amounts off the reckoning by 15 % (one deviation; 12 % is what it claims), scatter of 1.5 to 3 % where
//! 2.5 % is said to be usual, and a loss of 5 to 20 % of the outcome at 20 % beside the best. A quarter are steeper on one side,
//! a quarter have a flat top with steep sides, a quarter lean, so that only a quarter have the shape that is fitted.

use batterwright::baking::comparison::{Question, next_bake};
use batterwright::baking::statistics::best::Wish;
use batterwright::baking::statistics::curve::Observation;
use batterwright::baking::statistics::scatter::Usual;

const CAKES: u64 = 200;
/// More bakes than any baker does for one amount.
const PATIENCE: usize = 30;
const CLOSE: f64 = 0.05;

/// A linear congruential generator (Knuth, MMIX), of which the upper half is taken.
struct Chance(u64);

impl Chance {
    fn even(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 32) as f64 / f64::from(u32::MAX)
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    /// Normal, as the sum of twelve.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }
}

/// A cake 60 mm high at its best.
struct Cake {
    best: f64,
    loss: f64,
    shape: u64,
    scatter: f64,
    chance: Chance,
}

/// What is reckoned to be best of each.
const RECKONED: f64 = 200.0;
const NOW: f64 = 180.0;
const RANGE: (f64, f64) = (100.0, 300.0);

impl Cake {
    fn of(seed: u64) -> Self {
        let mut chance = Chance(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15));
        // The first draws of near seeds are near.
        (0..8).for_each(|_| {
            chance.even();
        });
        let off = (0.15 * chance.normal()).clamp(-0.35, 0.35);
        Self {
            best: RECKONED * (1.0 + off),
            loss: chance.between(0.05, 0.20),
            shape: seed % 4,
            scatter: chance.between(0.015, 0.03),
            chance,
        }
    }

    fn height(&self, amount: f64) -> f64 {
        // 1 at 20 % beside the best.
        let way = (amount / self.best - 1.0) / 0.2;
        let fall = match self.shape {
            0 => way * way,
            1 if way > 0.0 => 2.0 * way * way,
            1 => way * way,
            2 => 0.4 * way * way + 0.6 * way.powi(4),
            _ => way * way * (1.0 - 0.3 * way.clamp(-1.5, 1.5)),
        };
        60.0 * (1.0 - self.loss * fall).max(0.2)
    }

    fn bake(&mut self, amount: f64) -> f64 {
        self.height(amount) * (1.0 + self.scatter * self.chance.normal())
    }

    fn is_found(&self, amount: f64) -> bool {
        (amount / self.best - 1.0).abs() <= CLOSE
    }
}

/// The best amount found, and after how many bakes.
fn by_proposals(cake: &mut Cake) -> (f64, usize) {
    let asked = Question {
        factor: "sugar".to_owned(),
        unit: " g",
        now: NOW,
        low: RANGE.0,
        high: RANGE.1,
        step: 1.0,
        predicted: Some((RECKONED, 0.12 * RECKONED)),
        wish: Wish::Largest,
        usual: Usual {
            deviation: 0.025 * 60.0,
            worth: 4.0,
        },
    };
    let mut baked: Vec<Observation> = Vec::new();
    loop {
        let next = next_bake(&asked, &baked);
        if next.stop || next.bakes.is_empty() || baked.len() >= PATIENCE {
            return (next.best.unwrap_or(NOW), baked.len());
        }
        for bake in next.bakes {
            let outcome = cake.bake(bake.amount);
            baked.push(Observation {
                amount: bake.amount,
                outcome,
            });
        }
    }
}

fn by_steps(cake: &mut Cake, mut step: f64) -> (f64, usize) {
    let mut baked: Vec<(f64, f64)> = Vec::new();
    let mut bake = |amount: f64| -> (f64, usize) {
        let known = baked.iter().find(|it| (it.0 - amount).abs() < 0.5);
        let outcome = known.map(|it| it.1).unwrap_or_else(|| {
            let outcome = cake.bake(amount);
            baked.push((amount, outcome));
            outcome
        });
        (outcome, baked.len())
    };
    let mut best = RECKONED;
    let (mut height, mut count) = bake(best);
    let mut side = 1.0;
    while step >= CLOSE - 1e-9 {
        let mut turned = 0;
        while turned < 2 {
            let amount = (best + side * step * RECKONED).clamp(RANGE.0, RANGE.1);
            let (found, so_many) = bake(amount);
            count = so_many;
            if found > height {
                (best, height, turned) = (amount, found, 0);
            } else {
                (side, turned) = (-side, turned + 1);
            }
        }
        step /= 2.0;
    }
    (best, count)
}

/// The share of cakes whose best amount was found, and the mean number of bakes.
fn tried(seeds: std::ops::Range<u64>, look: impl Fn(&mut Cake) -> (f64, usize)) -> (f64, f64) {
    let count = (seeds.end - seeds.start) as f64;
    let (mut found, mut bakes) = (0, 0);
    for seed in seeds {
        let mut cake = Cake::of(seed);
        let (amount, so_many) = look(&mut cake);
        found += usize::from(cake.is_found(amount));
        bakes += so_many;
    }
    (found as f64 / count, bakes as f64 / count)
}

#[test]
fn proposals_find_the_best_amount_in_fewer_bakes_than_steps() {
    let seeds = 1..1 + CAKES;
    let say = |who: &str, (found, bakes): (f64, f64)| {
        println!(
            "{who}: {:.0} % of {CAKES} cakes within 5 %, {bakes:.1} bakes",
            100.0 * found
        );
    };
    let ours = tried(seeds.clone(), by_proposals);
    let tens = tried(seeds.clone(), |cake| by_steps(cake, 0.1));
    let twenties = tried(seeds, |cake| by_steps(cake, 0.2));
    say("the proposed bakes", ours);
    say("steps of 10, then 5 %", tens);
    say("steps of 20, 10, then 5 %", twenties);
    for stepped in [tens, twenties] {
        assert!(ours.0 > stepped.0 && ours.1 < stepped.1);
    }
}
