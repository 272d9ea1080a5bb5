import { expect, it } from 'vitest';
import { changed, historyOf, redone, undone } from '../../src/page/history';

it('takes back and gives back, and joins changes about one thing', () => {
  const slid = ['b', 'c', 'd'].reduce((so, next) => changed(so, next, 'length'), historyOf('a'));
  expect(slid.now).toBe('d');
  const other = changed(slid, 'e', 'ease');
  expect(undone(other).now).toBe('d');
  expect(undone(undone(other)).now).toBe('a');
  expect(undone(undone(undone(other)))).toEqual(undone(undone(other)));
  expect(redone(redone(undone(undone(other)))).now).toBe('e');
  // What is changed after something was undone is a change of its own.
  const anew = changed(undone(other), 'f', 'ease');
  expect(undone(anew).now).toBe('d');
  expect(redone(anew)).toEqual(anew);
});
