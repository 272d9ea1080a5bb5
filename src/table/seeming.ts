/**
 * What a line seems to say of all numbers of its file in words that no statement is read from. A line
 * too many is refused rather than one passed over, since whoever wrote it takes it for read.
 */
import type { LengthUnit } from '../units';
import { talksOfDescent, talksOfParts, talksOfSize, talksOfTurnedAxes } from './sheet-talk';
import { unitNamed } from './unit-name';

/**
 * Whether a text has one of the forms, besides what is `harmless`. They are tried only where it has a
 * sign that each of them needs, since to compile them takes longer than to read a whole chart.
 */
function oneOf(
  sign: RegExp,
  forms: readonly RegExp[],
  harmless = /$^/gu,
): (text: string) => boolean {
  return (text) => {
    if (!sign.test(text)) return false;
    const rest = text.replace(harmless, '');
    return forms.some((form) => form.test(rest));
  };
}

const UNIT = String.raw`(?:mm|cm|ins?|inch(?:es)?|centimet(?:er|re)s?|millimet(?:er|re)s?)\b|["\u2033]`;
const UNIT_NAME = String.raw`\b(?:mm|cm|[cm]\. ?m|millimet(?:er|re)s?|centimet(?:er|re)s?|inch(?:es)?)\b`;
/** Behind a figure, or over another unit, a unit says how long or how steep something is. */
const NOT_BEHIND_FIGURE = String.raw`(?<![\d\u00BC-\u00BE\u2150-\u215E] ?\/? ?|[\p{L}\d]\/)`;

const UNIT_WORD = new RegExp(
  `${NOT_BEHIND_FIGURE}(?:${UNIT_NAME}|\\b(?:metric|imperial)\\b)`,
  'iu',
);

/** `rounded to 1/16 in`, `to the nearest sixteenth`, `stitches per inch`: not what the numbers count. */
const OF_OTHER_THINGS = new RegExp(
  String.raw`\b(?:round(?:ed|ing)?(?: up| down)?(?: to)?(?: the| an?)?(?: nearest| whole| half)?|nearest|accurate to(?: an?| the)?|within(?: an?)?) [\p{L}\d/.]+(?: ${UNIT_NAME})?|` +
    String.raw`\bstitch(?:es)?\b[^,;]*|\b(?:\p{L}+[ -])?inch (?:rulers?|tapes?)\b|\b(?!be\b)(\p{L}+) by \1\b`,
  'giu',
);

const OTHER_THINGS_SIGN = /round|nearest|accurate|within|stitch|ruler|tape| by /iu;

function withoutOtherThings(text: string): string {
  return OTHER_THINGS_SIGN.test(text) ? text.replace(OF_OTHER_THINGS, '') : text;
}

/** A part of the name of a unit that is read, or of a system of them. */
const UNIT_SIGN = /[cm]m|[cm]\. ?m|met|inch|imperial/iu;

/** A unit in prose. */
export function seemsUnit(text: string): boolean {
  const rest = withoutOtherThings(text);
  return UNIT_SIGN.test(rest) && UNIT_WORD.test(rest);
}

const UNITS_NAMED = new RegExp(UNIT_WORD.source, 'giu');

/** A remark beside numbers that names another unit than theirs, as `measured in inches`; not `3 cm longer`. */
export function remarksOtherUnit(text: string, unit: LengthUnit): boolean {
  // A mark alone stands for what is above it.
  const alone = /\p{L}/u.test(text) ? unitNamed(text) : undefined;
  if (alone !== undefined) return alone !== unit;
  return [...withoutOtherThings(text).matchAll(UNITS_NAMED)].some(([name]) => {
    const named = unitNamed(name);
    if (named !== undefined) return named !== unit;
    return (name.toLowerCase() === 'metric') === (unit === 'in');
  });
}

const OF_ALL = String.raw`\b(?:all|everything|numbers?|values?|lengths|figures|measure\w*|moves|steps|coordinates|grades?|rules|increments)\b`;
const UNIT_OF_ALL = new RegExp(
  String.raw`${OF_ALL}[^\d.;]{0,30}?${NOT_BEHIND_FIGURE}(${UNIT_NAME})`,
  'giu',
);

/** `use cm`, `dimensions: cm`; what is rounded to it or comes from it has its preposition. */
const UNIT_AT_END = new RegExp(
  String.raw`^(?:\p{L}+[ :=]+){1,3}?(?<!\b(?:from|to|of|by|per|an?|the|and|or|nearest|whole|half) )(${UNIT_NAME})[.!]?$|^(${UNIT_NAME}) (?:used|throughout|everywhere|only)\b`,
  'giu',
);
/** `metric`, `imperial units`. */
const SYSTEM = /^(?:all |in )?(?:(metric)|imperial)(?: (?:units?|sheet))?[.!]?$/iu;

/** Another unit than `unit` for all that the file has. */
export function seemsUnitBesides(text: string, unit: LengthUnit): boolean {
  const rest = withoutOtherThings(text);
  if (!UNIT_SIGN.test(rest)) return false;
  const system = SYSTEM.exec(rest);
  if (system !== null) return (system[1] === undefined) !== (unit === 'in');
  return [...rest.matchAll(UNIT_OF_ALL), ...rest.matchAll(UNIT_AT_END)].some(
    ([, name, only = '']) => unitNamed(name ?? only) !== unit,
  );
}

const OTHER_UNIT =
  String.raw`(?:met(?:er|re)s?|dm|decimet(?:er|re)s?|micro(?:n|meter|metre)s?|\u00B5m|feet|foot|ft|yards?|yds?|` +
  String.raw`cent[i\u00ED\u00E8e]m[e\u00E8]t(?:ros?|ri|res)|mil[i\u00ED]l?[i\u00ED]?m[e\u00E8]t(?:ros?|ri|res)|` +
  String.raw`zentimetern?|millimetern|zoll|pouces?|pollic[ei]|pulgadas?|polegadas?)`;
/** Alone, or as the unit of all numbers; a foot that presses and cloth by the yard are none. */
const IN_OTHER_UNIT = new RegExp(
  String.raw`^${OTHER_UNIT}[.!]?$|(?:\b(?:in|en|as|are|units?)|[:=/(])\s*${OTHER_UNIT}(?!\p{L})|${OF_ALL}[^\d.;]{0,30}(?<!\p{L})${OTHER_UNIT}(?!\p{L})`,
  'iu',
);

/** Letters that are a unit only where nothing else can be meant. */
const SHORT_UNIT = /\b(?:in|units?(?: is|:)?) (?:m|pts?|points|px|pixels)$|^(?:px|pixels)$/iu;

/** Parts of the names of those units. */
const OTHER_UNIT_SIGN =
  /m[e\u00E8]t|dm|micro|\u00B5m|feet|foot|ft|yard|yd|zoll|pouce|pollic|pulgada|polegada|m$|pt|point|px|pixel/iu;
/** A unit that no file is read in. */
export const seemsOtherUnit: (text: string) => boolean = oneOf(OTHER_UNIT_SIGN, [
  IN_OTHER_UNIT,
  SHORT_UNIT,
]);

const PART = String.raw`1 ?[/\u2044] ?(?:2|4|5|8|10|16|20|32|64|100)|\u00BD|\u00BC|\u2155|\u215B|\u2152|0?\.(?:1|01|5|25|125|0625)`;
const PART_WORD = String.raw`(?:half|quarter|eighth|sixteenth|thirty-? ?second|sixty-? ?fourth|tenth|hundredth)`;
const OF_NUMBERS = String.raw`(?:^|\b(?:all|everything|numbers?|values?|lengths|figures|coordinates|increments|cells|tolerances?|count\w*|typed|written|given|noted)\b[^\d.;]{0,30}?|^(?:moves|steps|grades?|rules|measure\w*)[^\d.;]{0,20}?)`;
const OF_UNIT = String.raw`[ -]?(?:of )?(?:an? |the )?(?:${UNIT}|units?\b)`;
const FRACTIONS: readonly RegExp[] = [
  // 16ths, 1/16ths
  /\d(?:ths|nds)\b|\d\/\d+(?:th|nd)\b/iu,
  // sixteenths, a sixteenth of an inch, thirty-seconds
  /\b(?:eighths|sixteenths|thirty-? ?seconds?|sixty-? ?fourths?|tenths|hundredths|thousandths)\b/iu,
  new RegExp(String.raw`\b${PART_WORD}${OF_UNIT}`, 'iu'),
  // 1/16 in alone; numbers in 1/16, x 1/16 inch, unit of 1/8: a dart taken in 1/2 in is none
  new RegExp(String.raw`^(?:${PART})${OF_UNIT}(?: (?:units?|steps?|increments?))?$`, 'iu'),
  new RegExp(
    String.raw`(?:${OF_NUMBERS}(?:in|by|times|as|are|is|each|every|[=:])|\bunits?(?: of| is|[=:])?|\b(?:multipl(?:y|ied) by|times)|(?<!\d ?)[x\u00D7*]) ?(?:an? )?(?:${PART})(?:${OF_UNIT}(?! (?:wide|deep|long|apart)\b)|s?$)`,
    'iu',
  ),
  // x16, /16, divide by 16
  /(?:^|[ \p{L}])[x\u00D7*/] ?(?:2|4|8|16|32|64|10|100|1000)$|\b(?:divided?|multipl(?:y|ied))(?: \p{L}+){0,3} by (?:\d|two|four|eight|ten|sixteen)/iu,
  new RegExp(String.raw`${OF_ALL}[^\d.;]{0,20}\btimes (?:\d|two|four|eight|ten|sixteen)`, 'iu'),
  /\b(?:halves|quarters) of (?:an? |the )?(?:inch|in|cm|centimet(?:er|re)|unit)\b/iu,
  // values in percent, growth in %; a cloth of 3 % elastane is none
  new RegExp(String.raw`${OF_ALL}[^\d.;]{0,20}(?:%|\bper ?cent\b)|^(?:in )?(?:%|per ?cent)$`, 'iu'),
  /\b(?:growth|grows?|girths?) (?:is |are |given )*(?:in|by) (?:%|per ?cent)/iu,
  // growth per two sizes
  /\b(?:per|every|each) (?:two|three|four|[2-9]|second|other) sizes?\b/iu,
  // 16 to the inch, 16 per inch
  new RegExp(String.raw`\d (?:to|per) (?:the |an? )?(?:${UNIT})`, 'iu'),
];

/** A figure, or a part of the word for one. */
const FIGURE_SIGN =
  /[\d=%\u00BC\u00BD\u2152\u2155\u215B]|hal[fv]|quarter|eighth|sixt|thirt|tenth|hundredth|thousandth|times|divid|multipl|cent|per |every|each/iu;

const ofFractions = oneOf(FIGURE_SIGN, FRACTIONS, OF_OTHER_THINGS);

/** A fraction of a unit, or a number of them, for the unit of all numbers. */
export function seemsFraction(text: string): boolean {
  return ofFractions(text) || talksOfParts(text);
}

const FULL_SIZE =
  /\b(?:full|true|actual|life|real|natural)\b|\b1 ?[:/] ?1\b|\b100 ?%|^scale ?[:=] ?1$/iu;
const SCALE =
  /^(?:drawing )?scale ?[:=]|\b(?:half|third|quarter|fifth|tenth|reduced|double)[- ]scale\b|\b(?:half|quarter|reduced)[- ]size\b|\bscaled? (?:is |of |to |at |by |down |up |factor )*[\d\u00BC-\u00BE]|\bscaled (?:down|up)\b|^(?:at |in |drawn )*1 ?: ?\d|(?:^|\b(?:drawn|printed|copied|shown|pattern|reduced|enlarged)(?: \p{L}+)? )(?:at|to|by) \d+ ?%|\breduced(?:$|,| \d+ ?%| (?:to|by) (?:an? )?(?:half|third|quarter|fifth|\d\/\d$))|[\d\u00BC-\u00BE] ?%? scale\b|\d\/\d size\b|^(?:drawn|printed|copied|shown|pattern) (?:at|in|to) (?:an? )?(?:half|third|quarter|fifth|tenth|[1-9] ?[/\u2044] ?\d+|[\u00BC-\u00BE])$|\b(?:1|one|each|a) (?:square|box) ?(?:=|is|equals|means)/iu;

/** `50 % of full size`. */
const PART_OF_FULL =
  /(?:\b(?!100 ?%)\d+ ?%|\d\/\d|\b(?:half|third|quarter|fifth)) (?:of )?(?:the )?(?:full|true|actual|life|real|natural) ?-?size\b/iu;

const SCALE_SIGN = /scale|size|reduced|%|1 ?: ?\d|drawn|printed|copied|shown|pattern|square|box/iu;

/** Another scale than 1:1. */
export function seemsScale(text: string): boolean {
  if (!SCALE_SIGN.test(text)) return false;
  if (PART_OF_FULL.test(text)) return true;
  return SCALE.test(text) && !FULL_SIZE.test(text);
}

const SIGN = String.raw`(?:\b(?:positive|negative|plus|minus)\b(?![- ](?:sizes?|range|figures?|wom[ae]n))|(?<![\p{L}\d])[+\u2212-](?=\s*(?:[:=,]|$|up\b|down\b|(?:is|are|means)\b)))`;
const UP = String.raw`\b(?:up(?:wards?)?(?! to\b)|raises?|lifts?|(?:towards?|(?<!up )to) the waist)\b`;
const DOWN = String.raw`\b(?:down(?:wards?)?|lowers?|(?:towards?|(?<!down )to) the hem)\b`;
const ASIDE = String.raw`\b(?:left|inwards?|towards? (?:the )?(?:center|fold)|from (?:the )?side)\b`;
const Y = String.raw`(?<![\p{L}\d])[d+]?y\b`;
const TURNED = String.raw`\b(?:flip\w*|invert\w*|revers\w*|mirror\w*|opposite)\b`;
const GROWS = String.raw`\b(?:increas\w*|grows?|growing|positive|negative|plus|minus|(?:from|above) (?:the )?(?:hem|floor|bottom))\b`;

const bothOf = (a: string, b: string): RegExp => new RegExp(`${a}.*(?:${b})|(?:${b}).*${a}`, 'iu');
const X = String.raw`(?<![\p{L}\d])[d+]?x\b`;
/** `vertical up`, `heights count upward`; a vertical dart, and a nap that runs up, are none. */
const VERTICAL = new RegExp(
  String.raw`\b(?:verticals?|vertically|ordinates?|heights?)\b[ :=-]*(?:(?:axis|values?|coordinates?|directions?|moves?|positive|plus|is|are|runs?|points?|counts?|counted|goes|go|increas\w*|measured)[ :=-]+)*(?:${UP}|${DOWN})`,
  'iu',
);
const WAYS: readonly RegExp[] = [
  bothOf(X, `${ASIDE}|${TURNED}|\\b(?:negative|minus)\\b`),
  bothOf(String.raw`\bsigns?\b`, String.raw`\b(?:turned|changed|flipped|reversed|opposite)\b`),
  bothOf(String.raw`\b(?:minus|negative)\b`, String.raw`\b(?:out(?:wards?)?|right)\b`),
  /\b(?:moves|steps|growth) (?:is |are )?(?:positive|negative|plus|minus)\b/iu,
  bothOf(SIGN, `${UP}|${DOWN}|${ASIDE}`),
  bothOf(Y, `${UP}|${DOWN}|${TURNED}|${GROWS}`),
  VERTICAL,
  /^up(?:wards?)?[.!]?$/iu,
  /\b(?:[xy]|vertical|horizontal)[- ]?ax[ie]s\b|\baxes\b(?! of (?:the )?darts?)|\bcartesian\b/iu,
  bothOf(String.raw`\borigin\b`, String.raw`\b(?:bottom|lower|hem|right)\b`),
  /\bhem (?:is|=) ?(?:0|zero)\b/iu,
  /\b(?:0 ?, ?0(?: is)?(?: at|:)?|zero(?: point)?(?: is)?(?: at|:))\b.*\b(?:bottom|lower|hem|right)\b/iu,
  /\b(?:measured|counted|taken|heights?|distances?) (?:up )?(?:from|above) (?:the )?(?:hem|floor|bottom)\b/iu,
];

/** A direction of the axes other than that y runs `way`, or one that cannot be told. */
export function seemsOtherWay(text: string, way: 'up' | 'down'): boolean {
  if (talksOfTurnedAxes(text)) return true;
  if (!WAYS.some((form) => form.test(text))) return false;
  const [same, other] = way === 'up' ? [UP, DOWN] : [DOWN, UP];
  const isTurned = new RegExp(
    String.raw`${TURNED}|${ASIDE}|\b(?:negative|minus)\b|(?<![\p{L}\d])[\u2212-](?![\p{L}\d])`,
    'iu',
  );
  return (
    !new RegExp(same, 'iu').test(text) || new RegExp(other, 'iu').test(text) || isTurned.test(text)
  );
}

const LENGTH = String.raw`(?:\d[\d ./\u2044,]*|[\u00BC-\u00BE\u2150-\u215E])[ -]?`;
const SEAMS = String.raw`\b(?:seams?|turnings?|turn-?ups?|hems?)\b`;
const ADDED = String.raw`\b(?:incl(?:[.,]|ud\w*)?|added?|adds?|plus|allow\w*)`;
const ALLOWANCES: readonly RegExp[] = [
  // That there are none is what a file without the line says.
  /(?<!\b(?:no|without)(?: seam| hem)?[- ])\ballowances?\b/iu,
  new RegExp(
    String.raw`\bs\.?\/?a\.?(?:\s*[:=]|,?\s+(?:of |is )?\d)|${LENGTH}(?:${UNIT})?\s*s\.?\/?a\b`,
    'iu',
  ),
  new RegExp(String.raw`(?:${ADDED}|\bwith) s\.?\/?a\b|\bs\.?\/?a\b.*${ADDED}`, 'iu'),
  new RegExp(String.raw`${SEAMS}(?: widths?| depths?)?\s*[:=]\s*${LENGTH}`, 'iu'),
  new RegExp(
    String.raw`${SEAMS} (?:widths? |depths? )?(?:of |is |are |at |have )?${LENGTH}(?:${UNIT})(?! (?:below|above|from|under|off|round|wide at))`,
    'iu',
  ),
  new RegExp(String.raw`${LENGTH}(?:${UNIT}) (?:\p{L}+ )?${SEAMS}`, 'iu'),
  new RegExp(
    String.raw`${ADDED} (?:(?:[\d/."]+|${UNIT}|for|to|all|the|side)\s+){0,3}?${SEAMS}|${SEAMS} (?:are |is )?(?:included|added|allowed)`,
    'iu',
  ),
  /\bwith (?:seams|turnings)(?:$|[,.;])/iu,
  // plus 1 cm, 1 cm all round
  new RegExp(
    String.raw`^(?:with|${ADDED}) ${LENGTH}(?:${UNIT})$|${LENGTH}(?:${UNIT}) all (?:a?round)\b`,
    'iu',
  ),
  /(?<!\b(?:no|without) )\b(?:cut|cutting) lines?\b(?! (?:omitted|left out))|^cut(?:ting)? edges?$|\b(?:is|are|shows?) (?:the )?cut(?:ting)? (?:edge|outline)s?\b|^gross$|^(?:cut|cutting|gross) patterns?$/iu,
];

/** `seam allowances are not included`. */
const NONE_THERE =
  /\b(?:(?:seam|hem) )?(?:allowances?|seams|hems)(?: are| is)? not (?:included|there)\b|\bexcl(?:\.|ud\w*) (?:(?:seam|hem) )?(?:allowances?|seams|hems)\b/giu;

const SEWN = String.raw`\b(?:press|trim|clip|grad(?:e|ing)|finish|neaten|overlock|serge|layer)\w*`;
/** `press seam allowances toward the back`: how they are sewn says nothing of their width. */
const SEWING = String.raw`^[^\d]*(?:${SEWN}[^\d]*\ballowances?|\ballowances?\b[^\d]*${SEWN})[^\d]*$`;
/** No allowance is as wide as this; a hem all round is. */
const LONG = String.raw`(?<![\d./])(?:[1-9]\d[\d ./]*(?:ins?\b|inch(?:es)?\b|")|[2-9]\d[\d.]* ?(?:cm|centimet(?:er|re)s?)\b)`;

/** A figure, or a part of a word for what is outside a sewing line. */
const ALLOWANCE_SIGN =
  /[\d\u00BC-\u00BE\u2150-\u215E]|allow|\bs\.?\/?a|seam|turn|hem|round|cut|gross/iu;

/** Seam allowances, whether they are to be added or are there. */
export const seemsAllowance: (text: string) => boolean = oneOf(
  ALLOWANCE_SIGN,
  ALLOWANCES,
  new RegExp(`${NONE_THERE.source}|${SEWING}|${LONG}`, 'giu'),
);

/** `size: 14`, `drawn in size 14`; a range has several. */
const SIZE_NAMED =
  /\bsize(?:\s*[:=]\s*|\s+)((?:\p{L}{0,2}\d[\p{L}\d]*|\d?x*[sml])(?:\/\d+)?)(?![\p{L}\d])(?!\s*(?:[-\u2013,+&]|to\b|and\b|through\b|x\b))/giu;

/** `drawn in a 14`, `sample: 14`, `US 14`; a year has more digits. */
const SIZE_DRAWN =
  /(?:\b(?:drawn|drafted) (?:in|for|as|to) (?:an? )?|\b(?:sample|master|bas(?:e|is)|size of the base)(?: is|:)? |\bthis is an? |^(?:US|UK|EU) ?)(\d{1,2}W?)$/giu;

/** `pattern in size 14`: the size stands alone, or for what is drawn; `size 14 needs a longer zip` is about another. */
const OF_PATTERN =
  /(?:^|[,(]\s*)(?:(?:pattern|sample|master|base|block|drawing|drawn|drafted|pieces?|all|this|is|are|in|for|as|the|an?)\W+)*size\s*[:=]?\s*[\p{L}\d/]+\s*(?:$|[,.;)])/iu;

/** Another size than `base` for what the file has; any where the base is not stated. */
export function seemsOtherSize(text: string, base: string | undefined): boolean {
  if (talksOfSize(text, base)) return true;
  const isOfPattern = base === undefined || OF_PATTERN.test(text);
  return [...(isOfPattern ? text.matchAll(SIZE_NAMED) : []), ...text.matchAll(SIZE_DRAWN)].some(
    ([, size = '']) => size.toLowerCase() !== base?.toLowerCase(),
  );
}

const COUNTED = String.raw`\b(?:steps?|moves?|rules?|grad(?:es?|ed|ing)|increments?|counts?|counted|counting|cumulative|growth|relative|starts?|starting|base|zero|origin)\b`;
const END_SIZE = String.raw`(?:the )?(?:(?:smallest|largest|biggest)\b(?: sizes?| one)?|(?:lowest|highest|first|last|bottom|top) size\b)`;
/** `steps count from the largest size`, `the smallest size is the base`; from end to end is none. */
const FROM_END = new RegExp(
  String.raw`${COUNTED}[^\d.;]{0,30}?\b(?:from|against|off|(?:relative|compared) to|in|is|at)(?: |: ?)${END_SIZE}(?! (?:up )?to\b)|` +
    String.raw`^(?:(?:base|zero|origin|start)[ :=]+|relative to )${END_SIZE}|` +
    String.raw`\b(?:steps?|moves?|increments?|growth)\b[^.;]{0,20}\bfrom (?:large|larger|big|bigger) to small(?:er)?\b|` +
    String.raw`\b(?:steps?|moves?|increments?|growth)\b[^.;]{0,20}\bfrom the next (?:larger|bigger)(?: size| one)?\b|` +
    String.raw`\b(?:smallest|largest|biggest) (?:size )?(?:is|as|=) (?:the )?(?:base|zero|origin|start)\b`,
  'iu',
);
/** `moves from 14`, `relative to size 10`. */
const FROM_SIZE = new RegExp(
  String.raw`${COUNTED}[^\d.;]{0,30}?\b(?:from|against|off|(?:relative|compared) to)(?: the)?(?: size)? ((?:\p{L}{0,2}\d[\p{L}\d]*|\d?x*[sml])(?:\/\d+)?)[.!]?$`,
  'iu',
);

/** That moves or steps count from another size than `base`. */
export function seemsOtherOrigin(text: string, base: string): boolean {
  if (FROM_END.test(text) || talksOfDescent(text)) return true;
  const size = FROM_SIZE.exec(text)?.[1];
  return size !== undefined && size.toLowerCase() !== base.toLowerCase();
}

const EASE =
  /\b(?:incl(?:[.,]|ud\w*)?|with|plus|added?|has) (?:[\p{L}\d/."%]+ ){0,3}(?:ease|shrinkage)\b|\bshrinkage\b.*\b(?:added|included|allowed)\b|^(?:\p{L}+ ){0,2}finished garments?$|(?<!\b(?:no|without) )\bease (?:is |was )?(?:included|added)\b|\bease\b\s*(?:[:=,]|of\b|is\b)?\s*\d|(?<!\bnot |\bno )\b(?:garment|finished) (?:measure\w*|girths|lengths)\b/iu;

/** Lengths of a garment, or of a body with ease, where a body's are asked for. */
export const seemsEased: (text: string) => boolean = oneOf(/ease|shrinkage|garment|finished/iu, [
  EASE,
]);

const GIRTHS = String.raw`(?:girths?|circumferences?|measure(?:ments?|s|d)?|widths?)`;
const TIMES = String.raw`(?:half|halves|halved|quarters?|quartered|double|doubled|twice)`;
const OTHER_GIRTHS = new RegExp(
  String.raw`\b${TIMES} (?:of )?(?:the |all )?(?:body )?${GIRTHS}\b|\b${GIRTHS} (?:are |is |were )?(?:\p{L}+ )?${TIMES}\b|` +
    String.raw`\b(?:measured|taken|laid) (?:flat|on (?:the )?half)\b|\bflat (?:measure\w*|widths?)\b|` +
    String.raw`^(?:(?:on|of|for) )?(?:the |a )?half(?: of)?(?: the| a)? bod(?:y|ies)$|` +
    String.raw`\b(?:girths?|circumferences?) ?(?:[/\u00F7] ?[24]|x ?(?:0?\.5|1/2|\u00BD))`,
  'iu',
);

/** Other girths than those around a body where they are asked for: `half girths`, `girths doubled`, `measured flat`. */
export const seemsOtherGirths: (text: string) => boolean = oneOf(
  /hal[fv]|quarter|doubl|twice|flat|girth|circumf/iu,
  [OTHER_GIRTHS],
);
