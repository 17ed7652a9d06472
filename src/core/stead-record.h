/* stead-record.h - codes of content standards, and points of events.
 *
 * Only codes are kept, with the school's own short wording: the sentences of a standard
 * belong to who wrote them.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_STANDARD_NONE,          /* no code */
  STEAD_STANDARD_STANDARD,      /* PS.02 */
  STEAD_STANDARD_INDICATOR,     /* PS.02.01 */
  STEAD_STANDARD_MEASUREMENT,   /* AS.04.01.02.a: a, b and c are levels */
} SteadStandardLevel;

/**
 * stead_standard_level:
 * @code: as typed, without spaces
 *
 * Two or three capitals, then groups of two digits with points between.
 * Source of the pattern: a teacher-test correlation table that cites the agriculture
 * standards of 2015, and the edition of 2009, p. 29 (measurements).
 *
 * Returns: what the code names; %STEAD_STANDARD_NONE for another text
 */
SteadStandardLevel stead_standard_level (const char *code);

/**
 * stead_event_points:
 * @parts: (array length=n_parts): points of the team's parts
 * @n_parts: how many
 * @members: of the team
 * @each: points that one member can reach by himself
 *
 * Returns: the points of the whole event; NAN if one is below 0
 */
double stead_event_points (const double *parts,
                           gsize         n_parts,
                           double        members,
                           double        each);

G_END_DECLS
