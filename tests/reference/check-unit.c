/* check-unit.c - inputs that may come in one of several units. */
#include "check.h"

#include <math.h>
#include <string.h>

/* The end of a name, and what it is in kg, L, m, m² or °C. */
static const struct
{
  const char *suffix;
  double      factor;
  double      offset;
} units[] = {
  { "g", 0.001 }, { "kg", 1 }, { "oz", 0.45359237 / 16 }, { "lb", 0.45359237 },
  { "L", 1 }, { "mL", 0.001 }, { "gal", 3.785411784 }, { "m3", 1000 }, { "cuft", 28.316846592 },
  { "cm", 0.01 }, { "mm", 0.001 }, { "m", 1 }, { "in", 0.0254 }, { "ft", 0.3048 },
  { "m2", 1 }, { "sqft", 0.09290304 },
  { "C", 1 }, { "F", 5.0 / 9, -32 },
};

static double
to_base (double      value,
         const char *suffix)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_equal (units[i].suffix, suffix))
      return (value + units[i].offset) * units[i].factor;
  g_assert_not_reached ();
}

double
check_from_base (double      base,
                 const char *suffix)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_equal (units[i].suffix, suffix))
      return base / units[i].factor - units[i].offset;
  g_assert_not_reached ();
}

/* The name STEM_SUFFIX that is there; NULL if none, an error if two are. */
static char *
name_there (CheckRow   *row,
            const char *stem,
            GStrv       suffixes,
            gsize      *out_which)
{
  char *found = NULL;

  for (gsize i = 0; suffixes[i] != NULL; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s_%s", stem, suffixes[i]);

      if (!check_has (row, name))
        continue;
      if (found != NULL)
        {
          check_bad_input (row, name);
          continue;
        }
      *out_which = i;
      found = g_steal_pointer (&name);
    }
  return found;
}

gboolean
check_has_base (CheckRow   *row,
                const char *stem,
                const char *suffixes)
{
  g_auto(GStrv) list = g_strsplit (suffixes, " ", -1);
  gsize which = 0;
  g_autofree char *name = name_there (row, stem, list, &which);

  return name != NULL;
}

double
check_base (CheckRow   *row,
            const char *stem,
            const char *suffixes)
{
  g_auto(GStrv) list = g_strsplit (suffixes, " ", -1);
  gsize which = 0;
  g_autofree char *name = name_there (row, stem, list, &which);

  if (name == NULL)
    name = g_strdup_printf ("%s_%s", stem, list[0]);
  return to_base (check_number (row, name), list[which]);
}

double *
check_base_list (CheckRow   *row,
                 const char *stem,
                 const char *suffixes,
                 gsize      *n)
{
  g_auto(GStrv) list = g_strsplit (suffixes, " ", -1);
  gsize which = 0;
  g_autofree char *name = name_there (row, stem, list, &which);
  const double *values;
  double *bases;

  if (name == NULL)
    name = g_strdup_printf ("%s_%s", stem, list[0]);
  values = check_list (row, name, n);
  bases = g_new (double, *n);
  for (gsize i = 0; i < *n; i++)
    bases[i] = to_base (values[i], list[which]);
  return bases;
}
