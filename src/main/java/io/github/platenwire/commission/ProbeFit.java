package io.github.platenwire.commission;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.LineSettings;

/**
 * How well a definition fits what was heard.
 *
 * @param definition the definition
 * @param settings how the line was set
 * @param asked whether the device was asked for it
 * @param report what was decoded
 */
public record ProbeFit(
    DeviceDefinition definition, LineSettings settings, boolean asked, SampleReport report) {}
