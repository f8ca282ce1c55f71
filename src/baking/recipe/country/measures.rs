//! Ways of measuring that tell a recipe's country: they are more than words, so each is told here by hand.

/// A way of measuring: what is said of it, and its weights for us, uk, au, nz, ca. Below 0 it speaks against one.
pub struct Way {
    /// Its name for the baker.
    pub words: &'static str,
    /// Its weights.
    pub weights: [i32; 5],
}

const CUPS: usize = 0;
const GRAMS: usize = 1;
const OUNCES: usize = 2;
const GRAMS_AND_OUNCES: usize = 3;
const FAHRENHEIT: usize = 4;
const CELSIUS: usize = 5;
const FAN: usize = 6;
const GAS: usize = 7;
const STICK: usize = 8;
const CUP_OF_250: usize = 9;
const CUP_OF_240: usize = 10;
const SPOON_OF_20: usize = 11;
const SPOON_IN_ML: usize = 12;
const NINE_BY_THIRTEEN: usize = 13;
const CENTIMETRES: usize = 14;
const INCHES: usize = 15;
const MILK_PERCENT: usize = 16;
const CREAM_PERCENT: usize = 17;

/// The ways, each at its number above. From common practice.
pub const WAYS: &[Way] = &[
    way("cups", [0, -3, 0, 0, 0]),
    way("grams and no cups", [-3, 0, 0, 0, -2]),
    way("ounces and pounds", [2, 2, -1, -1, 1]),
    way("grams beside ounces", [0, 4, 0, 0, 0]),
    way("°F", [2, 0, 0, 0, 1]),
    way("°C", [-2, 1, 1, 1, 0]),
    way("fan", [0, 4, 1, 1, 0]),
    way("gas", [0, 5, 0, 0, 0]),
    way("stick of butter", [5, 0, 0, 0, 1]),
    way("cup of 250 ml", [0, -1, 3, 3, 3]),
    way("cup of 240 ml", [3, 0, 0, 0, 0]),
    way("tablespoon of 20 ml", [0, 0, 8, 0, 0]),
    way("spoons in ml", [0, 1, 0, 0, 2]),
    way("9 x 13", [3, 0, 0, 0, 3]),
    way("cm", [0, 1, 1, 1, 0]),
    way("inch", [1, 0, 0, 0, 1]),
    way("% milk", [1, 0, 0, 0, 3]),
    way("% cream", [0, 0, 0, 0, 5]),
];

const fn way(words: &'static str, weights: [i32; 5]) -> Way {
    Way { words, weights }
}

/// The ways of one line, a bit each.
#[derive(Clone, Copy, Debug, Default)]
pub struct Ways(u32);

impl Ways {
    /// Looks at the plain words of a line.
    pub fn of(words: &[&str]) -> Self {
        let mut ways = Self::default();
        // Every way has a figure in it, but for "a stick of butter"; a line of mere words is passed over.
        if !words.iter().any(|word| is_number(word) || *word == "stick") {
            return ways;
        }
        for (at, word) in words.iter().enumerate() {
            let after = |step: usize| words.get(at + step).copied().unwrap_or("");
            let before = |step: usize| at.checked_sub(step).map_or("", |at| words[at]);
            let is_counted = is_number(before(1));
            let seen = match *word {
                "cup" | "cups" if is_counted => {
                    ways.set(CUPS);
                    cup_of(after(1), after(2))
                }
                "cup" if before(1) == "ml" => cup_of(before(2), "ml"),
                "g" | "gm" | "gram" | "grams" | "kg" if is_counted => {
                    ways.set(GRAMS);
                    (is_number(after(1)) && is_ounce(after(2))).then_some(GRAMS_AND_OUNCES)
                }
                "oz" | "ounce" | "ounces" if is_counted => Some(OUNCES),
                // "2 lb loaf tin" names a tin.
                "lb" | "lbs" | "pound" | "pounds" if is_counted && after(1) != "loaf" => {
                    Some(OUNCES)
                }
                "tablespoon" | "tablespoons" | "tbsp" | "tbs" | "tblsp" if after(2) == "ml" => {
                    match (before(1), after(1)) {
                        ("1", "20") | ("2", "40") => Some(SPOON_OF_20),
                        ("1", "15") | ("2", "30") => Some(SPOON_IN_ML),
                        _ => None,
                    }
                }
                "tablespoon" | "tablespoons" if before(1) == "ml" && before(2) == "20" => {
                    Some(SPOON_OF_20)
                }
                "teaspoon" | "tsp" if after(1) == "5" && after(2) == "ml" => Some(SPOON_IN_ML),
                "stick" | "sticks" if is_counted || before(1) == "a" => {
                    is_butter(words, at).then_some(STICK)
                }
                "fan" if !matches!(after(1), "forced" | "bake" | "assisted") => {
                    let is_setting =
                        is_counted || matches!(before(1), "c" | "°") || is_number(after(1));
                    is_setting.then_some(FAN)
                }
                "gas" if after(1).len() == 1 && is_number(after(1)) => Some(GAS),
                "cm" if is_counted => Some(CENTIMETRES),
                "inch" | "inches" if is_counted => Some(INCHES),
                "x" | "by" => matches!((before(1), after(1)), ("9", "13") | ("13", "9"))
                    .then_some(NINE_BY_THIRTEEN),
                "%" => match after(1) {
                    "milk" => Some(MILK_PERCENT),
                    "cream" | "whipping" => Some(CREAM_PERCENT),
                    _ => None,
                },
                _ => heat(word, after(1), after(2)),
            };
            if let Some(way) = seen {
                ways.set(way);
            }
        }
        ways
    }

    fn set(&mut self, way: usize) {
        self.0 |= 1 << way;
    }

    fn has(self, way: usize) -> bool {
        self.0 & 1 << way != 0
    }
}

/// The ways seen so far.
#[derive(Default)]
pub struct Measures {
    /// The first line of each, 0 where there is none.
    first: [usize; WAYS.len()],
    cup_lines: usize,
    gram_lines: usize,
}

impl Measures {
    /// Takes the ways of a line in, counted from 1.
    pub fn add(&mut self, ways: Ways, line: usize) {
        self.cup_lines += usize::from(ways.has(CUPS));
        self.gram_lines += usize::from(ways.has(GRAMS));
        for (way, first) in self.first.iter_mut().enumerate() {
            if *first == 0 && ways.has(way) {
                *first = line;
            }
        }
    }

    /// The ways that count, once all lines are seen, each with its first line.
    pub fn counted(mut self) -> impl Iterator<Item = (usize, &'static Way)> {
        // One cup says little, and both scales say nothing: they are written for everybody.
        if self.cup_lines < 2 {
            self.first[CUPS] = 0;
        }
        if self.gram_lines < 3 || self.cup_lines > 0 {
            self.first[GRAMS] = 0;
        }
        if self.first[FAHRENHEIT] > 0 && self.first[CELSIUS] > 0 {
            self.first[FAHRENHEIT] = 0;
            self.first[CELSIUS] = 0;
        }
        self.first
            .into_iter()
            .zip(WAYS)
            .filter(|(line, _)| *line > 0)
    }
}

fn is_number(word: &str) -> bool {
    word.starts_with(|first: char| first.is_ascii_digit() || matches!(first, '¼'..='¾' | '⅐'..='⅞'))
}

fn is_ounce(word: &str) -> bool {
    matches!(word, "oz" | "ounce" | "ounces")
}

/// Which cup it is that comes to so many millilitres: a quarter and a third come to the same in all.
fn cup_of(number: &str, unit: &str) -> Option<usize> {
    if unit != "ml" {
        return None;
    }
    match number {
        "125" | "250" | "375" | "500" | "625" | "750" => Some(CUP_OF_250),
        "118" | "120" | "237" | "240" | "355" | "360" | "473" | "480" => Some(CUP_OF_240),
        _ => None,
    }
}

/// Whether a stick is one of butter: "2 sticks unsalted butter", "butter (1 stick)".
fn is_butter(words: &[&str], at: usize) -> bool {
    let near = &words[at.saturating_sub(3)..words.len().min(at + 5)];
    near.iter()
        .any(|word| matches!(*word, "butter" | "margarine"))
        && !near.contains(&"cinnamon")
}

/// The scale of an oven's heat, where a number with its degrees stands here.
fn heat(number: &str, one: &str, two: &str) -> Option<usize> {
    if number.len() != 3 || !number.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let is_degree = matches!(one, "°" | "degrees" | "deg");
    match if is_degree { two } else { one } {
        "f" | "fahrenheit" => Some(FAHRENHEIT),
        "c" | "celsius" | "centigrade" => Some(CELSIUS),
        // No oven goes to 300 °C in a recipe.
        _ if is_degree && matches!(number.as_bytes()[0], b'3' | b'4') => Some(FAHRENHEIT),
        _ => None,
    }
}
