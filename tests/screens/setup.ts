import '@testing-library/jest-dom/vitest';
import { cleanup, configure } from '@testing-library/react';
import { afterEach } from 'vitest';

// Parts that are fetched later may take their time on a busy machine.
configure({ asyncUtilTimeout: 30_000 });

afterEach(() => {
  cleanup();
  localStorage.clear();
});
