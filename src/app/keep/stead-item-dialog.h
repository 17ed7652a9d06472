/* stead-item-dialog.h - an item of the store room: new, or changed. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-item-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ITEM_DIALOG (stead_item_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadItemDialog, stead_item_dialog, STEAD, ITEM_DIALOG, SteadDialog)

/* @item_id: 0 for a new one. */
void        stead_item_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 item_id);
/* A new one of this kind. */
void        stead_item_dialog_show_new (GtkWidget *parent, SteadDesk *desk, SteadItemKind kind);

/* The kind as a person reads it; (transfer none). */
const char *stead_item_kind_label  (SteadItemKind kind);

G_END_DECLS
