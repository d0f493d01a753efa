import { createHash } from 'node:crypto'
import { readFileSync, readdirSync } from 'node:fs'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { defineConfig } from 'vitest/config'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))
const EARLY = here('./core/early.ts')
const KEPT = here('./offline/static')
const RUNTIME_LIST = here('../.build/stage/runtime/runtime.json')

/** The core's worker starts from a script of its own: it must not wait for the page's bundle. */
function earlyScript(): Plugin {
  return {
    name: 'early-script',
    transformIndexHtml: {
      order: 'post',
      handler(_html, { bundle }) {
        const chunk = Object.values(bundle ?? {}).find((part) => part.type === 'chunk' && part.facadeModuleId === EARLY)
        const src = chunk ? `./${chunk.fileName}` : './core/early.ts'
        return [{ tag: 'script', attrs: { type: 'module', async: true, src }, injectTo: 'head-prepend' }]
      },
    },
  }
}

/** The list of the runtime's files is compiled into the worker: one request less, and page and runtime cannot part. */
function runtimeList(): Plugin {
  const name = 'virtual:runtime'
  return {
    name: 'runtime-list',
    resolveId: (id) => (id === name ? `\0${name}` : undefined),
    load: (id) => (id === `\0${name}` ? `export default ${readFileSync(RUNTIME_LIST, 'utf8')}` : undefined),
  }
}

/** The app manifest and its icons keep their names (a phone's home screen refers to them), so they are not bundled. */
function keptNames(): Plugin {
  return {
    name: 'kept-names',
    apply: 'build',
    generateBundle() {
      for (const entry of readdirSync(KEPT, { recursive: true, withFileTypes: true })) {
        if (!entry.isFile()) continue
        const path = join(entry.parentPath, entry.name)
        this.emitFile({ type: 'asset', fileName: relative(KEPT, path), source: readFileSync(path) })
      }
    },
  }
}

const digest = (path: string, encoding: 'hex' | 'base64') =>
  createHash('sha256').update(readFileSync(path)).digest(encoding)

/**
 * A file's address and, where that does not name its content, its revision. The browser keeps compiled code with
 * a file only under the file's own address, so as many as can be carry their hash there.
 */
function address(name: string, sha256: string): [string, string | null] {
  if (name.startsWith('runtime/')) return [`${name}?${sha256.slice(0, 8)}`, null]
  return [name, name.startsWith('assets/') ? null : sha256]
}

export default defineConfig({
  // Relative, so that the folder can be put anywhere on a host.
  base: './',
  publicDir: here('../.build/stage'),
  build: {
    target: ['chrome112', 'firefox114', 'safari16.4'],
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    // For the build, which takes them out of the site: what a first screen loads, and whose work is bundled.
    manifest: true,
    license: { fileName: '.vite/license.json' },
    rolldownOptions: { input: { index: here('./index.html'), early: EARLY } },
  },
  worker: { format: 'es', plugins: () => [runtimeList()] },
  test: { include: ['**/*.test.ts', '**/*.test.tsx'], exclude: ['node_modules', 'dist'] },
  plugins: [
    runtimeList(),
    earlyScript(),
    keptNames(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'offline',
      filename: 'sw.ts',
      injectRegister: false,
      // Ours is a file of its own: the plugin would list it without a hash.
      manifest: false,
      injectManifest: {
        globPatterns: ['**/*'],
        globIgnores: ['sw.js', 'sw.mjs'],
        // The build's own check sees that nothing is left out; Workbox's default would drop the runtime.
        maximumFileSizeToCacheInBytes: 64 * 1024 * 1024,
        manifestTransforms: [
          async (entries) => ({
            manifest: entries.map((entry) => {
              const path = here(`./dist/${entry.url}`)
              const [url, revision] = address(entry.url, digest(path, 'hex'))
              return { ...entry, url, revision, integrity: `sha256-${digest(path, 'base64')}` }
            }),
            warnings: [],
          }),
        ],
      },
    }),
  ],
})
