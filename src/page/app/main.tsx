/** Opens the page with the state that stands in it. */
import { render } from 'preact';
import { PART_IDS } from '../page-file';
import type { PageState } from '../state';
import { Page } from './page';

const state = JSON.parse(document.getElementById(PART_IDS.state)?.textContent ?? '{}') as PageState;
const root = document.getElementById('page');
if (root !== null) render(<Page opened={state} />, root);
