/// \file
/// Published drag coefficients of a line across the stream, a ball and a plate.
///
/// Notation: Re Reynolds number on diameter; Cn normal drag coefficient of a line on d*L; Cd drag
/// coefficient on frontal area.
#pragma once

namespace offplumb::tackle {

/// Smooth cylinder across the stream, White's fit: Cn = 1 + 10 Re^(-2/3).
/// \param reynolds > 0; the fit is good for 1 < Re < 2e5 (10 % of the data).
/// Source: F. M. White, Viscous Fluid Flow, 2nd ed. (1991), eq. (3-225); from memory.
[[nodiscard]] double WhiteCylinder(double reynolds);

/// Smooth cylinder across the stream, Sucker and Brauer's fit
/// Cn = 1.18 + 6.8/Re^0.89 + 1.96/Re^0.5 - 0.0004 Re/(1 + 3.64e-7 Re^2).
/// \param reynolds in (1e-4, 2e5).
/// Source: D. Sucker and H. Brauer, Waerme- und Stoffuebertragung 8 (1975) 149; from memory.
[[nodiscard]] double SuckerBrauerCylinder(double reynolds);

/// Smooth sphere, Cd = (24/Re)(1 + 0.1806 Re^0.6459) + 0.4251/(1 + 6880.95/Re).
/// \param reynolds > 0; fitted for Re <= 2e5 (RMS 6 %). Above that the true drag may fall (drag
/// crisis); this law goes on at 0.47, which is on the side of more blowback. Source: A. Haider and
/// O. Levenspiel, Powder Technology 58 (1989) 63, eq. (11) with their table for spheres.
[[nodiscard]] double HaiderLevenspielSphere(double reynolds);

/// Smooth sphere with the drag crisis.
/// \param reynolds in (0, 1e6].
/// Source: F. A. Morrison, An Introduction to Fluid Mechanics (2013), eq. (8.83). A check on the
/// law above, not the default: roughness moves the crisis, and a scuffed ball is not a smooth
/// sphere.
[[nodiscard]] double MorrisonSphere(double reynolds);

/// Flat plate square to the stream: Cd = 1.10 + 0.02 (b/h + h/b).
/// \param aspect_ratio b/h > 0. Good for 0.1 to 10.
/// Source: S. F. Hoerner, Fluid-Dynamic Drag (1965), section 3-5; from memory.
[[nodiscard]] double PlateBroadside(double aspect_ratio);

/// Drag coefficient on planform of a plate that spins or sways about the tow axis at a mean
/// incidence: CD = CN(alpha) sin(alpha), CN = 2 pi sin(alpha)/(4 + pi sin(alpha)) scaled so that
/// CN(90 deg) is `PlateBroadside`. \param incidence_rad in [0, pi/2]. \param aspect_ratio length
/// over width. Source: the inclined plate of Rayleigh, H. Lamb, Hydrodynamics (6th ed. 1932) art.
/// 77, for the shape; Hoerner for the level; both from memory. No measurement of a flasher was
/// found: the band on tackle drag is wide for it.
[[nodiscard]] double InclinedPlateDrag(double incidence_rad, double aspect_ratio);

/// Factor on the drag of a line that strums (vortex-induced vibration) with a standing wave of
/// amplitude A*: 1 + 1.043 (2 A_rms/d)^0.65, with A_rms = A*/2 (root mean square over time and span
/// of a standing wave) and A*/d = log10(0.41 Re^0.36), the amplitude at zero damping. \param
/// reynolds in [500, 33000]; held at the ends outside. Source: J. K. Vandiver, OTC 4490 (1983), the
/// drag; R. Govardhan and C. H. K. Williamson, J. Fluid Mech. 561 (2006) 147, the amplitude.
[[nodiscard]] double StrummingFactor(double reynolds);

}  // namespace offplumb::tackle
