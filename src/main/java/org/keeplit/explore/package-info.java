/**
 * Explores every state that a program can reach, breadth first, and judges every rule in all of them: the fast
 * engine. The slow one in {@code plain} shares nothing with it.
 */
package org.keeplit.explore;
