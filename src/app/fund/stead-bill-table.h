/* stead-bill-table.h - the bill of a build as a table: prices and amounts are typed into it. */
#pragma once

#include "answer/stead-build-answer.h"
#include "app/stead-desk.h"
#include "app/stead-table.h"

G_BEGIN_DECLS

#define STEAD_TYPE_BILL_TABLE (stead_bill_table_get_type ())
G_DECLARE_FINAL_TYPE (SteadBillTable, stead_bill_table, STEAD, BILL_TABLE, GtkWidget)

GtkWidget *stead_bill_table_new (void);
/* Takes the rows out of @answer. */
void       stead_bill_table_set (SteadBillTable *self, SteadDesk *desk, SteadBuildAnswer *answer);

G_END_DECLS
