/* stead-take-dialog.h - something out of one lot, chosen by hand, for a kitchen batch. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-kitchen-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TAKE_DIALOG (stead_take_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadTakeDialog, stead_take_dialog, STEAD, TAKE_DIALOG, SteadDialog)

/* @need_base: what is still needed of the part's item; 0 or less: nothing */
void stead_take_dialog_show (GtkWidget              *parent,
                             SteadDesk              *desk,
                             gint64                  batch_id,
                             const SteadKitchenPart *part,
                             double                  need_base,
                             SteadDay                day,
                             gint64                  person_id);

G_END_DECLS
