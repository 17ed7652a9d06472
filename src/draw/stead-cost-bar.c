/* stead-cost-bar.c - the parts of one unit's cost as one bar. */
#include "config.h"

#include "draw/stead-cost-bar.h"

static const struct
{
  SteadRole    role;
  SteadPattern pattern;
} looks[STEAD_N_COST_KINDS] = {
  [STEAD_COST_FEED] = { STEAD_ROLE_EGG, STEAD_PATTERN_SOLID },
  [STEAD_COST_START] = { STEAD_ROLE_TOMATO, STEAD_PATTERN_RISING },
  [STEAD_COST_BEDDING] = { STEAD_ROLE_SHELL, STEAD_PATTERN_DOTS },
  [STEAD_COST_SUPPLIES] = { STEAD_ROLE_SAUCE, STEAD_PATTERN_LINES },
  [STEAD_COST_ASSETS] = { STEAD_ROLE_FISH, STEAD_PATTERN_FALLING },
  [STEAD_COST_OVERHEAD] = { STEAD_ROLE_CROP, STEAD_PATTERN_CROSS },
  [STEAD_COST_PACKAGING] = { STEAD_ROLE_WATER, STEAD_PATTERN_SOLID },
  [STEAD_COST_LABOR] = { STEAD_ROLE_CARD, STEAD_PATTERN_CROSS },
};

SteadRole
stead_cost_kind_role (SteadCostKind kind)
{
  g_return_val_if_fail ((int) kind >= 0 && kind < STEAD_N_COST_KINDS, STEAD_ROLE_SOFT);
  return looks[kind].role;
}

SteadPattern
stead_cost_kind_pattern (SteadCostKind kind)
{
  g_return_val_if_fail ((int) kind >= 0 && kind < STEAD_N_COST_KINDS, STEAD_PATTERN_SOLID);
  return looks[kind].pattern;
}

void
stead_cost_bar_layout (const SteadCostSheet *sheet,
                       double                width,
                       double                height,
                       SteadCostBarLayout   *out)
{
  double sum = 0, before = 0;

  g_return_if_fail (sheet != NULL && out != NULL);
  *out = (SteadCostBarLayout) { 0 };
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    sum += (double) MAX (sheet->parts[kind].shown_cents, 0);
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    {
      double cents = (double) MAX (sheet->parts[kind].shown_cents, 0);
      double from = width * (before / MAX (sum, 1)), to = width * ((before + cents) / MAX (sum, 1));

      if (cents <= 0)
        continue;
      out->kinds[out->n] = (SteadCostKind) kind;
      out->boxes[out->n++] = (SteadBox) { from, 0, to - from, height };
      before += cents;
    }
}

void
stead_cost_bar_paint (cairo_t                  *cr,
                      const SteadDrawStyle     *style,
                      const SteadCostBarLayout *layout)
{
  double line = style->font_size / 12;

  g_return_if_fail (cr != NULL && style != NULL && layout != NULL);
  cairo_save (cr);
  for (int i = 0; i < layout->n; i++)
    {
      const SteadBox *box = &layout->boxes[i];

      gboolean outline = MIN (box->width, box->height) > 3 * line;
      double inset = outline ? line / 2 : 0;   /* the outline stays in the box */

      cairo_new_path (cr);
      cairo_rectangle (cr, box->x + inset, box->y + inset, box->width - 2 * inset, box->height - 2 * inset);
      stead_fill_pattern (cr, style, stead_cost_kind_role (layout->kinds[i]),
                          stead_cost_kind_pattern (layout->kinds[i]), outline);
    }
  cairo_restore (cr);
}

void
stead_cost_key_paint (cairo_t              *cr,
                      const SteadDrawStyle *style,
                      SteadCostKind         kind,
                      double                size)
{
  double line = style->font_size / 12;

  g_return_if_fail (cr != NULL && style != NULL);
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rectangle (cr, line / 2, line / 2, size - line, size - line);
  stead_fill_pattern (cr, style, stead_cost_kind_role (kind), stead_cost_kind_pattern (kind), TRUE);
  cairo_restore (cr);
}
