/** All that is made for people, from files to pages. */
package org.keeplit.paper;
