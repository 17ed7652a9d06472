/* stead-cost-bar.h - the parts of one unit's cost as one bar. */
#pragma once

#include "core/stead-cost.h"
#include "draw/stead-draw.h"

G_BEGIN_DECLS

/* The role and pattern that a part has everywhere: bar, key, paper. */
SteadRole    stead_cost_kind_role    (SteadCostKind kind);
SteadPattern stead_cost_kind_pattern (SteadCostKind kind);

typedef struct
{
  int           n;
  SteadCostKind kinds[STEAD_N_COST_KINDS];
  SteadBox      boxes[STEAD_N_COST_KINDS];  /* they meet without gap and fill the width */
} SteadCostBarLayout;

/* Labor is left out: it stands apart.  Widths are in proportion to shown_cents. */
void stead_cost_bar_layout (const SteadCostSheet *sheet,
                            double                width,
                            double                height,
                            SteadCostBarLayout   *out);

void stead_cost_bar_paint (cairo_t                  *cr,
                           const SteadDrawStyle     *style,
                           const SteadCostBarLayout *layout);

/* The little square beside a line of the sheet. */
void stead_cost_key_paint (cairo_t              *cr,
                           const SteadDrawStyle *style,
                           SteadCostKind         kind,
                           double                size);

G_END_DECLS
