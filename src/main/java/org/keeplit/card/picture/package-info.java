/** One-line pictures of the work site and its neighbourhood. */
package org.keeplit.card.picture;
