/**
 * The language server: what an editor asks while a file is written, one handler a feature. It speaks the Language Server Protocol 3.17
 * over standard input and output.
 */
package org.keeplit.editor;
