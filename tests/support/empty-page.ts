/** Takes down what a test drew, so that the next one starts on an empty page. */
import { cleanup } from '@testing-library/react';
import { afterEach } from 'vitest';

afterEach(cleanup);
