import { execFile } from 'node:child_process'
import { createHash } from 'node:crypto'
import { readFileSync, readdirSync } from 'node:fs'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import type { Plugin } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { defineConfig } from 'vitest/config'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))
const EARLY = here('./core/early.ts')
const KEPT = here('./offline/static')
const CORE = here('../calc')
// `build.py dev` has a stage of its own, and a Python that keeps it up with the core.
const STAGE = process.env.STANCHION_STAGE ?? here('../.build/stage')
const PYTHON = process.env.STANCHION_PYTHON
const RUNTIME_LIST = join(STAGE, 'runtime/runtime.json')

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

/** After an edit of the core: a fresh pack into the running Python; where fields changed with it, the page again. */
function coreAtEveryEdit(): Plugin {
  return {
    name: 'core-at-every-edit',
    apply: () => Boolean(PYTHON),
    configureServer(server) {
      let last: Promise<unknown> = Promise.resolve()
      let waiting = false
      const edit = async () => {
        waiting = false
        try {
          const { stdout } = await promisify(execFile)(PYTHON!, ['-m', 'web.toolchain.dev'], { cwd: here('..') })
          if (stdout.includes('fields changed')) {
            server.environments.client.moduleGraph.invalidateAll()
            server.ws.send({ type: 'full-reload' })
          } else server.ws.send({ type: 'custom', event: 'core-edited' })
        } catch (problem) {
          const message = (problem as { stderr?: string }).stderr ?? String(problem)
          server.config.logger.error(message)
          server.ws.send({ type: 'error', err: { message, stack: '' } })
        }
      }
      server.watcher.add(CORE)
      server.watcher.on('all', (_event, path) => {
        if (waiting || !path.startsWith(CORE) || !/\.(py|json)$/.test(path)) return
        waiting = true
        last = last.then(edit)
      })
    },
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
  publicDir: STAGE,
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
    coreAtEveryEdit(),
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
