/* stead-statement-pane.h - the statements of a time, of the farm or of one part of it. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STATEMENT_PANE (stead_statement_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadStatementPane, stead_statement_pane, STEAD, STATEMENT_PANE, SteadPane)

G_END_DECLS
