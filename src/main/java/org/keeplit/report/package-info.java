/** A page to look through a proof, or through the story of what breaks. */
package org.keeplit.report;
