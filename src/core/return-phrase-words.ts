/**
 * The 1,024 words that return phrases are made of. The list was written for this project, from no other list, and belongs to it.
 *
 * Its rules, so that whoever changes it keeps them (tests/core/return-phrase.test.ts checks the first five):
 * 1. Three to seven letters, a to z, in order. A power of two: each word of a phrase is worth exactly ten bits.
 * 2. No two words share their first four letters, and no word of three letters begins another: four letters tell which word is meant.
 * 3. No two words are one slip apart (a letter wrong, missing, too many, or two neighbours exchanged).
 * 4. No two words sound alike, and no word has a British and an American spelling.
 * 5. No number and no name of a punctuation mark or key: a telephone that is spoken to writes those as signs.
 * 6. Things and doings a British child of twelve knows. No names of people, places or makes; no plurals; nothing that frightens, nothing
 *    of the body, illness, belief, strong drink or insult, and nothing that becomes so beside another word of the list.
 *
 * Never take a word out or put another in its place once phrases are in use: whoever was given that word could not come back.
 */
const list =
  'abacus abseil acorn acrobat aerial airline airport airship album alley almond alpaca alpine anchor animal anorak antenna anthem ' +
  'antler anvil apple apricot apron arcade arch arena arrive artist athlete atlas atom attic autumn avenue aviary avocado awake axle ' +
  'bagel baggage bagpipe bakery balance balcony ballad bamboo banana banjo banner banquet bantam barber barcode barge barley barrel ' +
  'basin basket bassoon baton battery beacon beaker beanie bear beehive beeswax beetle belt bench bicycle bird biscuit bison blanket ' +
  'blazer blossom blouse blue board bobbin bobcat bonfire bonnet bookend bottle bounce bowl bowtie box bracken braid bramble branch ' +
  'bread breeze brick bright bronze broom brush bubble bucket budgie buffet buggy builder bulldog bulrush bumper bundle bunting ' +
  'burrow bus buzzard cabinet cactus cake camel canary candle canopy canvas captain caravan carbon cargo carpet carrot cartoon ' +
  'cashier castle catfish cavern celery cello cement cereal chair chalk chamber channel chapter chariot chat cheese chef chess ' +
  'chicken chimney chirp chisel chive chorus chuckle churn chutney cinema circus city cleaner climb clip clock clog cloth cloud ' +
  'clover cluster coach cobweb cocoa college comb comedy comic compass concert conifer cookie copper copy corner costume cottage ' +
  'country coupon courage cowboy cowshed coyote crab craft crane crayon cricket crimson crinkle crisp crocus crowd crumble crust ' +
  'cuboid cupcake curtain cushion cutlery cycle cymbal dairy damson dance dart dazzle denim design desk dewdrop diagram dial diamond ' +
  'dinghy dinner dish dollar dolphin dome domino donkey doodle doormat dragon drama drawer dresser drink driver drizzle drop drummer ' +
  'duck dune dustpan duvet dynamo eagle earmuff earth echo eclipse editor eggcup elf emerald emperor engine eraser estuary exit ' +
  'expert fabric falcon family farmer feast feather fence ferry field finch find firefly fizz flannel flask flax fleece flicker ' +
  'flint flipper float floor florist flower flute foam fog food forest fork fossil frame freezer fresh fridge friend frost frown ' +
  'frozen fruit furnace gadget gallop game garage garden garlic garment gateway gather gazebo gearbox gecko gerbil gherkin giant ' +
  'gift giggle giraffe glacier glade glider glimpse glitter globe glossy glow gnome goalie goat goblet golden golf gong goose ' +
  'gosling grammar granite graph grass grater gravy green grill grocer groove grotto ground growl guard guava guide guitar guppy ' +
  'gymnast habit haddock haggis halfway hall hammer hamster handbag happy harp harvest hatbox hawk hayloft headset heater hedge ' +
  'height helium helmet helper hen herb heron herring hexagon hidden highway hike hillock hinge hockey hoist holiday hoop horizon ' +
  'hornet horse hotel hotpot hound hour hubcap hungry hurdle hurry husky hut iceberg icicle icing idea igloo iguana imagine indigo ' +
  'inkpot insect invite island item ivory jackdaw jam javelin jazz jelly jester jetty jewel jigsaw jingle joke journey judge judo ' +
  'juggler juice jukebox jumble jump junior karate kayak kazoo kennel kestrel ketchup kettle keyhole keyring kimono kingdom kiosk ' +
  'kipper kitbag kitchen kite kitten kiwi knot koala ladder lady lagoon lamp landing lantern lasso laugh laundry lava lawn layer ' +
  'leaflet leap learn leek legend lemon lemur lentil leopard lesson lettuce lever library lichen lid lilac lime linen linnet lion ' +
  'lizard llama loaf lobby lobster locker lodge loft logbook lolly loom lucky luggage lullaby lunar lunch macaw machine magenta ' +
  'magic magnet magpie maize mallard mammal manager mango mansion mantis marble margin marker maroon marquee marsh mascot mask ' +
  'mayfly meadow measure meerkat menu mermaid message metal meteor middle mill mineral minibus minnow mirage mirror mist mixer ' +
  'monarch money monitor month moon moped mosaic moss mouse movie mud muesli museum music mustard napkin narrow narwhal navy nectar ' +
  'neon nephew netball network newt night nimble ninja noisy north notepad novel nugget nursery nutmeg oak oasis oatcake oblong oboe ' +
  'ocean octave octopus office oilcan onion opera orange orbit orca orchid oregano origami osprey ostrich otter outdoor outside oval ' +
  'oven oxygen oyster padlock page palace pancake panda panel papaya paper paprika parade parcel parent parka parsnip party pastry ' +
  'path patio pattern pebble pecan pedal peel pelican pencil penguin pennant people pepper perch perfect petrol phone photo piano ' +
  'piccolo pickle picnic picture pigeon pillow pirate pivot pixel pizza placard planet plastic platter playpen plug plumber plywood ' +
  'poet polite pollen polygon pony popcorn poplar postbox potato pottery pouch power pram prawn pretzel printer prism prune puddle ' +
  'puffin pulley pumpkin pupil puppet purple purse puzzle pylon pyramid quail quarry queen quick quilt rabbit radar radish rafter ' +
  'railway rainbow raisin ranger rattle ravioli reader recipe record recycle red remind remote repair reply reptile rescue rhino ' +
  'rhombus rhubarb ribbon rice ring rinse ripple risotto rivet road roast rocket roller roof rooster rosebud rotor rowboat royal ' +
  'rudder rug ruler runner runway rustle saddle safari sailor salad salmon salt sandpit sapling sardine satchel satsuma saucer ' +
  'sawdust scallop scarf scatter science scone scooter scrape screen scroll scuba seafood seagull seal seaside seaweed seesaw selfie ' +
  'sequin sesame shadow shallot shampoo shawl shed sheep shelter sherbet shield shimmer shine shoebox shopper shovel shower shrub ' +
  'shuffle shuttle sidecar sieve signal silent silk silver singer skating sketch skewer skittle skyline slate sledge sleeve slice ' +
  'smile smooth snack snail snooze snorkel snow soapbox sofa soil solar soldier sonata sorbet south spanner sparkle spatula speak ' +
  'spell sphere spinach spiral splash sponge spoon sport spray spruce square squeak squid stadium stamp stapler star station stencil ' +
  'step stereo sticker stitch storm stove straw stream string studio sugar suit sultana summit sundial sunny sunrise sunset supper ' +
  'surf swan sweater swim swing swirl syrup tabby table tadpole talk tandem tangle tape tarmac taxi teacup team teapot tennis tent ' +
  'termite terrace thank thatch thaw thicket thimble thirst thistle thread throw thunder tiger tile timber tinfoil tinsel tiptoe ' +
  'toaster toddler toffee tomato toolbox topaz topping torch toucan tourist town toyshop tractor traffic train transit trapeze ' +
  'travel trawler tray treacle tree trellis trifle trinket trio triplet trolley trophy trot trowel truck truffle tube tugboat tulip ' +
  'tumbler tuna tunnel turbine turnip turret turtle tusk tweed twig twinkle typist umpire unicorn uniform unlock uphill urchin valve ' +
  'vanilla varnish vase vault vehicle velvet viaduct video view village vinegar vinyl violin visitor voice volcano volley voltage ' +
  'voucher vowel voyage wafer waffle wagtail walkway wallet walnut walrus waltz wand washer wasp watch waxwork weave webcam website ' +
  'weekend welcome weld wheat wheel whirl whisper white wicker widget wildcat window winter wire wobble wool world writer yarn ' +
  'yellow yeti yodel yolk zebra zigzag zinc zip zone zoo';

/** In alphabetical order, 1,024 of them. */
export const phraseWords: readonly string[] = Object.freeze(list.split(' '));
