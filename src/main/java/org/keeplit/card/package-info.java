/** Paper for the crew: step cards and their pictures, from the same proved text. */
package org.keeplit.card;
