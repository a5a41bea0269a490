/** What every page for people has in common: escaped text, the hash of what was proved, a folder written whole or not at all. */
package org.keeplit.page;
