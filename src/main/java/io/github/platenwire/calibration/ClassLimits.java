package io.github.platenwire.calibration;

import java.util.OptionalDouble;

/**
 * The limits of one class. A limit that the standard does not set is absent. Immutable.
 *
 * @param name such as {@code 0.5}
 * @param errorPercent greatest error of indication, of either sign, in percent of the applied value
 * @param errorMicrometres the error that is allowed in any case
 * @param repeatabilityPercent greatest range of the runs' errors, in percent
 * @param reversibilityPercent greatest difference of falling to rising, of either sign, in percent
 * @param zeroPercent greatest zero after a run, of either sign, in percent of the greatest applied
 *     value
 * @param resolutionPercent coarsest resolution in percent of the applied value
 * @param resolutionMicrometres the resolution that is allowed in any case
 * @param errorStrain the error that is allowed in any case, as a share of the gauge length
 * @param gaugeLengthPercent greatest error of the gauge length, of either sign, in percent
 * @param resolutionMultiple how many resolutions the least applied value must be
 */
public record ClassLimits(
    String name,
    OptionalDouble errorPercent,
    OptionalDouble errorMicrometres,
    OptionalDouble repeatabilityPercent,
    OptionalDouble reversibilityPercent,
    OptionalDouble zeroPercent,
    OptionalDouble resolutionPercent,
    OptionalDouble resolutionMicrometres,
    OptionalDouble errorStrain,
    OptionalDouble gaugeLengthPercent,
    OptionalDouble resolutionMultiple) {}
