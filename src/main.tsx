/** Wires the rooms once; the only file that knows all of them. (Placeholder until the rooms are there.) */
import { createRoot } from 'react-dom/client';

const root = document.getElementById('root');
if (root) createRoot(root).render('Stillbeat');
