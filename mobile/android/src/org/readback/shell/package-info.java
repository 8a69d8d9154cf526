/**
 * The phone's side: the activity, the service, the provider, and one adapter for each service of the phone. Framework
 * classes only. Decisions are in org.readback.desk.
 */
package org.readback.shell;
