// What is done to a build once Trunk has put it together, in order.

await import('./minify.mjs');
await import('./precache.mjs');
