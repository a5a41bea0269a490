/** Log sheets: blank from a procedure, and filled ones checked against it. */
package org.keeplit.log;
