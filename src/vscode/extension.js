// Starts the language server and shows stories; everything else is in the server.
const path = require("path");
const vscode = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

function jar() {
  const set = vscode.workspace.getConfiguration("keeplit").get("jar");
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri.fsPath ?? ".";
  return set || path.join(folder, "target", "keeplit.jar");
}

async function activate(context) {
  const command = vscode.workspace.getConfiguration("keeplit").get("java");
  const server = { command, args: ["-XX:+UseSerialGC", "-jar", jar(), "editor"] };
  client = new LanguageClient("keeplit", "keeplit", server, {
    documentSelector: [{ scheme: "file", language: "keeplit" }],
    synchronize: {
      fileEvents: vscode.workspace.createFileSystemWatcher("**/*.{network,equipment,rules,procedure,examples}"),
    },
    middleware: {
      executeCommand: async (name, args, next) => {
        const story = await next(name, args);
        if (name === "keeplit.story" && story) {
          const document = await vscode.workspace.openTextDocument({ content: String(story) });
          await vscode.window.showTextDocument(document, { preview: true, viewColumn: vscode.ViewColumn.Beside });
        }
        return story;
      },
    },
  });
  context.subscriptions.push(client);
  await client.start();
}

function deactivate() {
  return client?.stop();
}

module.exports = { activate, deactivate };
