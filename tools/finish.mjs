// What is done to a build once Trunk has put it together, in order.

// The bare page of the bench is finished by hand: it has one part, and this script.
if (process.env.TRUNK_STAGING_DIR) {
  await import('./bundle.mjs');
  await import('./split.mjs');
}
await import('./minify.mjs');
await import('./precache.mjs');
