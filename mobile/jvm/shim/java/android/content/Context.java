package android.content;

/** Stands in for the framework's class on a plain JVM: the generated binding only names it. */
public class Context {
}
