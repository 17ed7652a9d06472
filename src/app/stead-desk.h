/* stead-desk.h - the open farm as the window's parts see it.
 *
 * Pages read through answers and change facts through stead_desk_act() only,
 * so that each change is one named step, is shown with its Undo, and refreshes
 * everything that follows from it.
 */
#pragma once

#include <gio/gio.h>

#include "answer/stead-cost-answer.h"
#include "answer/stead-due-answer.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

#define STEAD_TYPE_DESK (stead_desk_get_type ())
G_DECLARE_FINAL_TYPE (SteadDesk, stead_desk, STEAD, DESK, GObject)

/* Signals:
 *  "changed" ()                        facts changed, or another farm was opened
 *  "said" (char *text, gboolean undo)  something to show in the strip below, with Undo or not
 *  "jump" (int target, gint64 id)      a place is asked to show something (SteadTarget)
 *  "selected" ()                       another product or period was chosen
 *  "left" (GObject *dialog) → gboolean  one was closed with work in it that is not saved; whoever
 *                                      answers TRUE takes it over, to show it again or let it go
 */

SteadDesk  *stead_desk_new       (void);
/* (nullable): no farm is open yet */
SteadStore *stead_desk_get_store (SteadDesk *self);
void        stead_desk_set_store (SteadDesk *self, SteadStore *store);
/* (transfer none) (nullable): settings of the open farm, kept until facts change */
const SteadFarm *stead_desk_get_farm (SteadDesk *self);
/* (transfer none) (nullable): what is due today, found once until facts or the day change;
 * %NULL with @error where it cannot be read */
const SteadDueAnswer *stead_desk_get_due (SteadDesk *self, GError **error);

/* The product and period that Price shows; the strip's figure follows. */
gint64      stead_desk_get_product (SteadDesk *self);
void        stead_desk_set_product (SteadDesk *self, gint64 product_id);
SteadPeriod stead_desk_get_period  (SteadDesk *self);
void        stead_desk_set_period  (SteadDesk *self, SteadPeriod period);

typedef gboolean (*SteadDeskAct) (SteadStore *store, gpointer data, GError **error);

/**
 * stead_desk_act:
 * @name: what the person does, translated: "22 eggs on March 3"
 * @act: writes through repositories; its failure rolls everything back
 *
 * Returns: %TRUE when it is saved; @error is for the person, beside the field
 */
gboolean    stead_desk_act  (SteadDesk     *self,
                             const char    *name,
                             SteadDeskAct   act,
                             gpointer       data,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

void        stead_desk_undo (SteadDesk *self);
void        stead_desk_redo (SteadDesk *self);
void        stead_desk_say  (SteadDesk *self, const char *text, gboolean with_undo);
void        stead_desk_jump (SteadDesk *self, SteadTarget target, gint64 id);
/* Returns: whether somebody took @dialog over; %FALSE: it is to go at once */
gboolean    stead_desk_leave (SteadDesk *self, GObject *dialog) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
