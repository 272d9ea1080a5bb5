/** The engine's side of the page: a wish in, what it asks for out. */
import { STYLES } from '../../draft/styles';
import { InputError, problemText } from '../../errors';
import { styleDrawings } from '../../files/style-drawings';
import type { Answer, Refused, Told, Wish } from '../wish';
import type { Needs } from './cloth-view';
import { clothView, needsWithMemory } from './cloth-view';
import { coverageView } from './coverage-view';
import { derivedBoard, lessonOf, markView } from './lesson-view';
import type { Grader } from './graded';
import { graderWithMemory } from './graded';
import { skirtView } from './skirt-view';
import { spotView } from './spot-view';
import { takenFiles } from './taken-files';

/** What answers wishes one after another, wrong input by what was refused; a fault is thrown. */
export function answerer(): (wish: Wish) => Promise<Answer> {
  const grade = graderWithMemory();
  const needs = needsWithMemory();
  return async (wish) => {
    try {
      return { told: await toldOf(wish, grade, needs) };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return { refused: refusedOf(error) };
    }
  };
}

function refusedOf({ message, place, problem }: InputError): Refused {
  const each = [problem, ...(problem.also ?? [])].map((one) => ({
    message: problemText({ ...one, also: [] }),
    place: one.place ?? {},
  }));
  return { message, place, each };
}

async function toldOf(wish: Wish, grade: Grader, needs: Needs): Promise<Told[Wish['kind']]> {
  switch (wish.kind) {
    case 'skirt':
      return skirtView(grade(wish.pattern));
    case 'spot':
      return spotView(grade(wish.pattern), wish.spot);
    case 'styles': {
      const drawings = new Map(
        styleDrawings(STYLES.map((style) => ({ style, settings: [] }))).map(({ name, text }) => [
          name,
          text,
        ]),
      );
      return STYLES.map(({ name, description }) => ({
        ...{ name, description },
        drawing: drawings.get(`${name}.svg`) ?? '',
      }));
    }
    case 'coverage':
      return coverageView(wish.pattern, wish.asked);
    case 'cloth': {
      const result = grade(wish.pattern);
      return clothView(result, needs(result), wish.asked);
    }
    case 'exercise':
      return lessonOf(wish.asked);
    case 'mark':
      return markView(wish.lesson);
    case 'derive':
      return derivedBoard(wish.pattern, wish.point);
    case 'take':
      return await takenFiles(grade(wish.pattern), wish.wanted);
  }
}
