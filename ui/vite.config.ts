import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  plugins: [svelte()],
  // The fonts lie with the pages' fonts, outside this folder; only `npm run dev` asks.
  server: { fs: { allow: ['.', '../src-tauri/crates/press/fonts'] } },
  // Nothing becomes a data: URL: the content policy allows fonts from files alone.
  build: { target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  test: { include: ['src/**/*.test.ts'] },
})
