/** The kit asks no other host for anything, and neither do its tools: import this before Astro starts. */
process.env.ASTRO_TELEMETRY_DISABLED = '1';
process.env.ASTRO_DISABLE_UPDATE_CHECK = 'true';
