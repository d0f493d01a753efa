import type { ManifestOptions } from 'vite-plugin-pwa'

/** What a phone needs to put the page on its home screen. */
export const appManifest: Partial<ManifestOptions> = {
  id: './',
  name: 'Stanchion',
  short_name: 'Stanchion',
  description: 'Sizes motorcycle suspension springs and fork oil height for a rider.',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: '#EFF2EE',
  theme_color: '#EFF2EE',
  icons: [
    { src: 'icons/icon.svg', sizes: 'any', type: 'image/svg+xml' },
    { src: 'icons/icon-192.png', sizes: '192x192', type: 'image/png' },
    { src: 'icons/icon-512.png', sizes: '512x512', type: 'image/png' },
    { src: 'icons/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
}
