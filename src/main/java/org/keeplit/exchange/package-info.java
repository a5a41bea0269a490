/**
 * What commands tell, in formats that other programs read: JSON with published schemas, SARIF 2.1.0 and JUnit XML. The same answer
 * gives the same bytes: no times, no absolute paths.
 */
package org.keeplit.exchange;
