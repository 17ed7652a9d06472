/* stead-cash-rules.h - what written rules ask of those who handle a school's money.
 *
 * The rows stand in data/rules/cash.csv with their sources.  They are examples: the rule
 * that holds is that of the school's own state and district.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  char       *text;     /* "Utah: deposit within 3 banking days." */
  const char *source;   /* of the table; never freed */
} SteadCashRule;

void stead_cash_rule_free (SteadCashRule *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCashRule, stead_cash_rule_free)

/**
 * stead_cash_rules_list:
 *
 * Returns: (transfer full) (element-type SteadCashRule): a sentence a row, in the order
 *   of the table
 */
GPtrArray *stead_cash_rules_list (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
