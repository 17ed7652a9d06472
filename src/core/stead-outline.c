/* stead-outline.c - the outline of a pen on its plan: corners, sides, area. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-outline.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Corners nearer than this are one, and a pen with less area is a line: 1 mm, 1 cm². */
#define SAME_M 1e-3
#define LEAST_M2 1e-4

/* Farther than this no corner lies. */
#define FAR_M 1e5

double
stead_outline_sides (const SteadCorner *corners,
                     gsize              n,
                     double            *out_sides_m)
{
  double sum = 0;

  g_return_val_if_fail (corners != NULL && n >= 3 && n <= STEAD_OUTLINE_MOST, NAN);
  g_return_val_if_fail (out_sides_m != NULL, NAN);

  for (gsize i = 0; i < n; i++)
    {
      const SteadCorner *next = &corners[(i + 1) % n];

      out_sides_m[i] = hypot (next->x_m - corners[i].x_m, next->y_m - corners[i].y_m);
      sum += out_sides_m[i];
    }
  return sum;
}

double
stead_outline_area_m2 (const SteadCorner *corners,
                       gsize              n)
{
  double twice = 0;

  g_return_val_if_fail (corners != NULL && n >= 3 && n <= STEAD_OUTLINE_MOST, NAN);

  /* From the first corner, so that a plan far from the origin loses no digits. */
  for (gsize i = 1; i + 1 < n; i++)
    twice += (corners[i].x_m - corners[0].x_m) * (corners[i + 1].y_m - corners[0].y_m)
             - (corners[i + 1].x_m - corners[0].x_m) * (corners[i].y_m - corners[0].y_m);
  return fabs (twice) / 2;
}

/* On which side of the line from @a to @b lies @c; 0 on it. */
static int
side_of (const SteadCorner *a,
         const SteadCorner *b,
         const SteadCorner *c)
{
  double cross = (b->x_m - a->x_m) * (c->y_m - a->y_m) - (b->y_m - a->y_m) * (c->x_m - a->x_m);
  double noise = 1e-9 * (1 + fabs (b->x_m - a->x_m) + fabs (b->y_m - a->y_m));

  return (cross > noise) - (cross < -noise);
}

/* Whether @c, which lies on the line, lies between its ends. */
static gboolean
within (const SteadCorner *a,
        const SteadCorner *b,
        const SteadCorner *c)
{
  return c->x_m >= MIN (a->x_m, b->x_m) && c->x_m <= MAX (a->x_m, b->x_m)
         && c->y_m >= MIN (a->y_m, b->y_m) && c->y_m <= MAX (a->y_m, b->y_m);
}

static gboolean
sides_meet (const SteadCorner *a,
            const SteadCorner *b,
            const SteadCorner *c,
            const SteadCorner *d)
{
  int abc = side_of (a, b, c);
  int abd = side_of (a, b, d);
  int cda = side_of (c, d, a);
  int cdb = side_of (c, d, b);

  if (abc * abd < 0 && cda * cdb < 0)
    return TRUE;
  return (abc == 0 && within (a, b, c)) || (abd == 0 && within (a, b, d))
         || (cda == 0 && within (c, d, a)) || (cdb == 0 && within (c, d, b));
}

/* Two sides with a common corner need no look of their own: where one goes back over
 * the other, it ends on it or passes its start, and so meets a third one there. */
static gboolean
crosses_itself (const SteadCorner *corners,
                gsize              n)
{
  for (gsize i = 0; i < n; i++)
    for (gsize j = i + 2; j < n; j++)
      if ((j + 1) % n != i
          && sides_meet (&corners[i], &corners[i + 1], &corners[j], &corners[(j + 1) % n]))
        return TRUE;
  return FALSE;
}

static gboolean
set_range (GError    **error,
           const char *message)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE, message);
  return FALSE;
}

gboolean
stead_outline_check (const SteadCorner  *corners,
                     gsize               n,
                     GError            **error)
{
  g_return_val_if_fail (corners != NULL || n == 0, FALSE);

  if (n < 3 || n > STEAD_OUTLINE_MOST)
    return set_range (error, _("A pen has three corners or more, and 200 at most. Check the plan."));
  for (gsize i = 0; i < n; i++)
    if (!(fabs (corners[i].x_m) <= FAR_M && fabs (corners[i].y_m) <= FAR_M))
      return set_range (error, _("A corner of the plan lies too far away. Check the plan."));
  for (gsize i = 0; i < n; i++)
    for (gsize j = i + 1; j < n; j++)
      if (hypot (corners[j].x_m - corners[i].x_m, corners[j].y_m - corners[i].y_m) < SAME_M)
        return set_range (error, _("Two corners of the plan lie in one place. Move or remove one of them."));
  if (crosses_itself (corners, n))
    return set_range (error, _("Two sides of the plan cross or touch each other. Move a corner."));
  if (stead_outline_area_m2 (corners, n) < LEAST_M2)
    return set_range (error, _("The plan has no room inside. Move a corner."));
  return TRUE;
}

double
stead_square_diagonal_m (double length_m,
                         double width_m)
{
  return length_m > 0 && width_m > 0 ? hypot (length_m, width_m) : NAN;
}
