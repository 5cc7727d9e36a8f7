// A process of its own that starts the embedded database, says so in one line of JSON, and stops on SIGTERM.
// Arguments: the data folder, and the module to start it with.
const [dataFolder, module] = process.argv.slice(2);
const { startEmbeddedPostgres } = await import(module);
const log = (text) => console.log(JSON.stringify({ log: text }));
try {
  const database = await startEmbeddedPostgres({ dataFolder, log });
  process.once('SIGTERM', async () => {
    console.log(JSON.stringify({ stopped: await database.stop() }));
  });
  console.log(JSON.stringify({ uid: process.getuid?.(), url: database.url, adopted: database.adopted }));
} catch (error) {
  console.log(JSON.stringify({ refused: error.message, advice: error.advice }));
}
