package org.readback.shell;

import org.junit.runners.model.FrameworkMethod;
import org.junit.runners.model.InitializationError;
import org.robolectric.RobolectricTestRunner;
import org.robolectric.internal.bytecode.InstrumentationConfiguration;

/**
 * Runs tests with the binding outside Robolectric's sandboxes: a native library can be loaded by one class loader only, and there
 * is a sandbox for each API level. Every test of the shell uses it, because sandboxes are shared between test classes.
 */
public class ShellRunner extends RobolectricTestRunner {
    public ShellRunner(Class<?> test) throws InitializationError {
        super(test);
    }

    @Override
    protected InstrumentationConfiguration createClassLoaderConfig(FrameworkMethod method) {
        return new InstrumentationConfiguration.Builder(super.createClassLoaderConfig(method))
                .doNotAcquirePackage("go.").doNotAcquirePackage("org.readback.mobile.").build();
    }
}
