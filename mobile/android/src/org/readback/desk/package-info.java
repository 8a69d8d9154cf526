/**
 * What the shell decides, in plain Java: the order of sayings, what a key means, when to ask for a permission, how the
 * model is unpacked. Nothing here imports android.*; the phone's services come in as small interfaces, so every class
 * runs in a test without a phone. A test holds this rule.
 */
package org.readback.desk;
