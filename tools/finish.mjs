// What is done to a build once Trunk has put it together, in order.

// The bare page of the bench is finished by hand, and has one part.
if (process.env.TRUNK_STAGING_DIR) await import('./split.mjs');
await import('./minify.mjs');
await import('./precache.mjs');
