//! Words that tell a recipe's country.

/// Words and their weights, one a line and sorted: for us, uk, au, nz, ca, each from 0 to 9.
///
/// A weight says how much more usual the words are there than in recipes at large: 1 a hint, 3 the usual word of that
/// country and not of others, 6 said nowhere else. Countries that share a word each have their weight; a country
/// where the word is known but not usual has a low one. To add one: lower case, accents and apostrophes left out,
/// a blank for a hyphen, in the singular where the plural only adds an "s". All from common practice. The longest
/// words that fit are taken, so that "muffin tin", which every country says, is not "tin": its weights are all 0.
pub const SIGNS: &str = "\
100 s and 1000 01210
active dry yeast 30002
all purpose flour 30013
almond flour 20001
almond meal 10310
anzac 00540
ap flour 30001
apple pie spice 30000
baking block 04000
baking paper 00330
baking parchment 03000
baking sheet 11001
baking soda 10011
baking tin 02110
baking tray 01110
beetroot 02220
berry sugar 00004
bi carb 01430
bi carb soda 00510
bicarb 02320
bicarb soda 00510
bicarbonate of soda 04310
biscuit 01110
bittersweet chocolate 30001
black treacle 05000
bread flour 10001
broil 20002
bun tin 04000
butter tart 00006
cake and pastry flour 00006
cake flour 10001
cake pan 20102
cake tin 02220
candied peel 01001
canned pumpkin 20001
canola 10111
caramel slice 00320
caster sugar 03330
castor sugar 02320
center 10000
centimetre 01111
centre 01111
choc 01210
choc chip 01320
chocolate melt 00410
chocolate vermicelli 03000
cilantro 30003
cling film 03000
cling wrap 00310
clingfilm 03000
clotted cream 03000
color 20000
coloring 20000
colour 02222
colouring 02222
confectioners sugar 40000
cookie sheet 20002
cooking chocolate 01320
corn starch 20002
corn syrup 30002
cornflour 03330
cornstarch 30003
courgette 04020
creme fraiche 01000
custard powder 02221
demerara 03101
desiccated coconut 03330
dessertspoon 02220
digestive 03111
digestive biscuit 03210
digestive cookie 00004
double cream 04100
dried yeast 02210
drinking chocolate 02220
dry yeast 10101
easy blend 03000
extra sharp cheddar 30000
fairy bread 00410
fairy cake 04000
fan assisted 03000
fan bake 00050
fan forced 00530
fan oven 04010
fancy molasses 00005
fast action 04000
fibre 01111
flaked almond 02210
flavor 20000
flavoring 20000
flavour 02222
flavouring 02222
free range 02210
free range egg 03310
frosting 10001
fruit mince 00330
full cream milk 00320
full fat milk 02100
gas mark 06000
gelatin 20002
gelatine 02220
gingersnap 20001
glace 02220
golden caster sugar 06000
golden raisin 30002
golden syrup 03331
golden yellow sugar 00005
graham 30003
graham cracker 30002
graham crumb 20004
graham wafer 00005
greaseproof 03110
ground almond 02020
half and half 40001
heaped 01110
heavy cream 40001
heavy whipping cream 50000
high grade flour 00060
homo milk 00006
homogenized milk 10003
hundreds and thousands 03320
icing 01110
icing mixture 00500
icing sugar 03332
icing sugar mixture 00600
jam sugar 03000
jelly crystal 00330
jumbo oat 03010
knob of butter 02110
kosher salt 40001
kumara 00060
lamington 00420
large flake oat 00005
lb loaf tin 05000
light brown soft sugar 05000
liquid glucose 02220
litre 01111
loaf pan 20102
loaf tin 02220
malt biscuit 00130
medium egg 03000
milk chocolate chip 10001
mixed peel 02221
mixed spice 03230
molasses 20002
mould 01111
muffin tin 00000
muscovado 04100
natural yoghurt 02220
old cheddar 00005
old fashioned oat 30001
old fashioned rolled oat 30001
parchment paper 20002
pastry flour 10001
patty case 00410
patty pan 00410
pikelet 01220
plain biscuit 00330
plain chocolate 04000
plain flour 03320
plain sweet biscuit 00420
plain yogurt 10001
plastic wrap 10101
porridge oat 04000
pouring cream 01410
powdered sugar 40000
pumpkin pie spice 30001
pumpkin puree 20002
pure cream 00300
pure icing sugar 00500
quick rise yeast 10002
rapeseed oil 05000
rapid rise 20001
raw sugar 00220
rice bran oil 00230
rice malt syrup 00510
rolled oat 10111
sachet 01110
sandwich tin 04000
saskatoon 00004
self raising 03330
self rising 30001
semi skimmed 05000
semi sweet 30002
semisweet 30002
sharp cheddar 20001
sheet pan 20001
shortening 20002
shredded coconut 10101
single cream 05000
skewer 01110
skim milk 10101
skimmed milk 03000
slice pan 00410
slice tin 00240
sliced almond 20001
slivered almond 10111
soft brown sugar 02120
soured cream 04000
sponge roll tin 00040
sr flour 03330
standard flour 00060
standard plain flour 00060
streaky bacon 02120
strong bread flour 05000
strong flour 04010
strong white bread flour 05000
strong white flour 05000
sultana 03331
superfine sugar 20001
sweet biscuit 00320
sweetened coconut 20001
sweetened shredded coconut 30001
swiss roll tin 02110
tasty cheese 00430
tblsp 00120
tbs 00100
tea towel 01110
thickened cream 00600
thread coconut 00040
tin 01110
toothpick 10001
traybake 03000
treacle 03210
trim milk 00050
turbinado 30000
unsweetened chocolate 20002
vanilla essence 01230
vanilla wafer 30001
vegetable shortening 20002
wax paper 10001
wheaten cornflour 00420
whipping cream 11003
whole milk 11000
whole wheat 30003
wholemeal 03330
wine biscuit 00040
yellow sugar 00004
yoghurt 01220
zucchini 20212
";

#[cfg(test)]
mod tests {
    use super::SIGNS;

    #[test]
    fn every_row_is_sorted_plain_and_weighed() {
        let mut last = "";
        for row in SIGNS.lines() {
            let (words, weights) = row.rsplit_once(' ').unwrap_or_else(|| panic!("{row}"));
            assert!(last < words, "{last} before {words}");
            assert!(
                weights.len() == 5 && weights.bytes().all(|byte| byte.is_ascii_digit()),
                "{row}"
            );
            assert!(
                words
                    .bytes()
                    .all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b' '),
                "{row}"
            );
            last = words;
        }
    }
}
