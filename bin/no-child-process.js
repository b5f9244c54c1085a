// In the bundle: commander would start subcommands that are programs of their own, of which there are none, and loads for
// it what takes a fiftieth of a start.
module.exports = {}
