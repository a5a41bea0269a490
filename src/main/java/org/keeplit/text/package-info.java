/** Places in source files and the problems found there; the bottom room, which imports nothing. */
package org.keeplit.text;
