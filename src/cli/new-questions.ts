/** What `new` asks at a terminal where the call leaves it out: a question a line, with its default. */
import { InputError, problemText } from '../errors';
import type { NewChartRequest, TapeUnit } from '../jobs/new-chart';
import { TAPE_UNITS, newChart } from '../jobs/new-chart';
import { publishedTable } from '../standards/published-tables';
import { tidyText } from '../table/tidy-text';
import { unitNamed } from '../table/unit-name';
import type { Ask } from './conversation';
import { list } from './options';

/** A chart's request with the file that it goes to. */
export interface ChartOrder extends NewChartRequest {
  readonly path?: string | undefined;
}

/** Sizes that are proposed, as many shops name them. Common practice, no source. */
const USUAL_SIZES: Readonly<Record<TapeUnit, string>> = {
  in: '6,8,10,12,14',
  cm: '36,38,40,42,44',
};

/**
 * Completes an order. `checked` gives the path or throws InputError; an answer that is refused is told
 * by `refuse` and asked again. Throws what asking throws.
 */
export async function completeOrder(
  order: ChartOrder,
  ask: Ask,
  { usual, checked, refuse }: OrderForm,
): Promise<ChartOrder> {
  const answer = async <Value>(
    question: string,
    preset: string,
    read: (text: string) => Value,
  ): Promise<Value> => {
    for (;;) {
      const typed = tidyText(await ask(`${question}${preset === '' ? '' : ` (${preset})`}: `));
      try {
        return read(typed === '' ? preset : typed);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        // Whoever answers sees the question, and has no options.
        const { place: _, orField: __, ...problem } = error.problem;
        refuse(problemText(problem));
      }
    }
  };
  // Whoever is asked for a file may give the name alone.
  const named = (text: string): string => checked(text.includes('.') ? text : `${text}.csv`);
  const path = order.path ?? (await answer('File', usual, named));
  const title = order.title ?? (await answer('Title', 'none', titleOf));
  const isOpen = order.like === undefined && order.sizes === undefined;
  const like = isOpen
    ? await answer('Sizes like a table, such as jis-l-4005', 'none', tableOf)
    : order.like;
  const table = like === undefined ? undefined : publishedTable(like);
  const unit =
    order.unit ?? (await answer('Unit, in or cm', table === undefined ? '' : table.unit, unitOf));
  const own = table?.sizes.join(',') ?? USUAL_SIZES[unit];
  const sizesOf = (text: string): readonly string[] => {
    const sizes = list(text);
    newChart({ unit, sizes, like });
    return sizes;
  };
  const sizes = order.sizes ?? (await answer('Sizes', own, sizesOf));
  return { path, title, like, unit, sizes };
}

/** What the questions need of the command. */
export interface OrderForm {
  /** The path that is proposed. */
  readonly usual: string;
  readonly checked: (path: string) => string;
  readonly refuse: (message: string) => void;
}

const NONE = /^(?:none|no)?$/iu;

function titleOf(text: string): string | undefined {
  if (NONE.test(text)) return undefined;
  newChart({ title: text, unit: 'in', sizes: ['8'] });
  return text;
}

function tableOf(text: string): string | undefined {
  if (NONE.test(text)) return undefined;
  return newChart({ like: text }).table?.id;
}

/** A unit of a tape however it is spelled. Throws InputError `bad-option`. */
function unitOf(text: string): TapeUnit {
  const named = unitNamed(text);
  const unit = TAPE_UNITS.find((one) => one === named);
  if (unit !== undefined) return unit;
  throw new InputError('bad-option', {
    what: 'a tape has no such unit',
    allowed: TAPE_UNITS.join(' or '),
    got: text,
  });
}
