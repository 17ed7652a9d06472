/* stead-food-label.c - what the law wants on the label of a food. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-food-label.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A unit of a statement and how many ounces it has. */
typedef struct
{
  const char *name;
  double      oz;
} Part;

static const Part weights[] = { { "lb", 16 }, { "oz", 1 } };
static const Part volumes[] = { { "qt", 32 }, { "pt", 16 }, { "oz", 1 } };

/* "24" or "5.25", whatever the locale. */
static void
append_number (GString *text,
               double   value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append (text, g_ascii_formatd (buffer, sizeof buffer, "%.6g", stead_round_digits (value, 2)));
}

/* "1 qt 1 pt 4 oz": largest whole units first, zero parts left out. */
static void
append_parts (GString    *text,
              const Part *parts,
              gsize       n,
              double      oz)
{
  const char *space = "";

  oz = stead_round_digits (oz, 2);
  for (gsize i = 0; i < n; i++)
    {
      gboolean last = i + 1 == n;
      double count = last ? oz : stead_round_down (oz / parts[i].oz);

      if (count == 0)
        continue;
      g_string_append (text, space);
      append_number (text, count);
      g_string_append_printf (text, " %s", parts[i].name);
      oz = stead_round_digits (oz - count * parts[i].oz, 2);
      space = " ";
    }
}

static char *
statement (const char  *opening,
           const char  *unit,
           const Part  *parts,
           gsize        n,
           double       oz,
           double       from_oz,
           double       below_oz,
           GError     **error)
{
  g_autoptr(GString) text = g_string_new (opening);

  if (!(stead_round_digits (oz, 2) > 0 && oz < below_oz))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("The statement is known for packages under 4 pounds or under a gallon. "
                             "For a larger one read 21 CFR 101.7."));
      return NULL;
    }
  append_number (text, oz);
  g_string_append_printf (text, " %s", unit);
  if (oz >= from_oz)
    {
      g_string_append (text, " (");
      append_parts (text, parts, n, oz);
      g_string_append (text, ")");
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
stead_net_weight_text (double   weight_oz,
                       GError **error)
{
  return statement ("Net Wt. ", "oz", weights, G_N_ELEMENTS (weights), weight_oz, 16, 64, error);
}

char *
stead_net_fluid_text (double   volume_floz,
                      GError **error)
{
  return statement ("Net ", "fl oz", volumes, G_N_ELEMENTS (volumes), volume_floz, 16, 128, error);
}

double
stead_panel_cylinder (double height,
                      double circumference,
                      double share)
{
  return height * circumference * share;
}

void
stead_ingredient_order (const double *amounts,
                        gsize         n,
                        gsize        *out_order)
{
  g_return_if_fail ((amounts != NULL && out_order != NULL) || n == 0);

  /* By insertion: recipes are short, and equal weights keep their order. */
  for (gsize i = 0; i < n; i++)
    {
      gsize place = i;

      for (; place > 0 && amounts[out_order[place - 1]] < amounts[i]; place--)
        out_order[place] = out_order[place - 1];
      out_order[place] = i;
    }
}
