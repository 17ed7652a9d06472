/* stead-ask-dialog-private.h - what the parts of the dialog about a new checklist share. */
#pragma once

#include "answer/stead-check-list.h"
#include "app/check/stead-ask-dialog.h"
#include "app/keep/stead-pick.h"
#include "app/stead-dialog.h"
#include "app/stead-field.h"

G_BEGIN_DECLS

struct _SteadAskDialog
{
  SteadDialog           parent_instance;

  GArray               *answers;    /* of SteadCheckAnswered, their strings interned */
  SteadCheckPlanAnswer *plan;       /* (nullable): nothing to plan yet */
  SteadCheckList       *renewed;    /* (nullable): the list that is made anew */
  GPtrArray            *kitchens;   /* of SteadKitchen */
  GPtrArray            *sales;      /* of SteadSale */
  gboolean              quiet;      /* the code fills in, not the person */

  SteadPick            *what;
  SteadField           *menu, *day;
  GtkWidget            *stops, *questions;
  GtkLabel             *unknown, *sentence, *caution;
};

/* In the choice of what is checked: a kitchen batch by its id, a menu, or a sale day below it. */
#define STEAD_ASK_MENU -1

static inline gboolean
stead_ask_is_sale (gint64 what)
{
  return what < STEAD_ASK_MENU;
}

static inline gint64
stead_ask_of_sale (gint64 sale_id)
{
  return STEAD_ASK_MENU - sale_id;
}

static inline gint64
stead_ask_sale_of (gint64 what)
{
  return STEAD_ASK_MENU - what;
}

/* An answer, in place of an older one to the same question. */
void            stead_ask_dialog_keep  (SteadAskDialog *self, const SteadCheckAnswered *answer);
/* @rows: what stead_check_local_rows() made of the farm's own limits; the order points into it. */
SteadCheckOrder stead_ask_dialog_order (SteadAskDialog *self, SteadDay day, const GArray *rows);
/* As typed, or today; STEAD_DAY_NONE: what was typed is no day, which the field says. */
SteadDay        stead_ask_dialog_day   (SteadAskDialog *self);
/* Plans what is to be checked from what was answered so far, and shows it. */
void            stead_ask_dialog_plan  (SteadAskDialog *self);

G_END_DECLS
