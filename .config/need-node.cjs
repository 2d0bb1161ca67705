// Run by npm after an install. The Node that runs the kit comes with it for Linux and Windows (optionalDependencies) and
// is then the one that runs this; on other systems it has to be there already.
const [major, minor] = process.versions.node.split('.').map(Number);

if (major < 24 || (major === 24 && minor < 2)) {
  console.error(`
This kit needs Node 24 on your system, and you have Node ${process.versions.node}.
Install Node 24 from https://nodejs.org, then run the command again.
`);
  process.exit(1);
}
