/* stead-draft.h - what is typed into a form of a page and is not saved yet.
 *
 * It stays with the thing that it is about while the form turns to another one, and the
 * window asks before it closes over it.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * stead_draft_watch:
 * @form: shows always the same thing, named with stead_draft_name(), or one at a time, each told with
 *   stead_draft_turn()
 * @parts: (array length=n): of @form: each text and check box in them can hold something typed;
 *   now nothing is
 */
void stead_draft_watch (GtkWidget         *form,
                        GtkWidget * const *parts,
                        gsize              n);

/* What it is called, where it is told that something is typed for it. */
void stead_draft_name (GtkWidget  *form,
                       const char *name);

/**
 * stead_draft_turn:
 * @id: of the thing that @form shows from now on
 * @name: as for stead_draft_name()
 *
 * Before the parts are emptied for it: keeps what is typed for the last one.
 */
void stead_draft_turn (GtkWidget  *form,
                       gint64      id,
                       const char *name);

/* Once the parts are as they are for a thing for which nothing is typed, when it is shown
 * and when it is saved.  Puts back what was typed for it before. */
void stead_draft_begin (GtkWidget *form);

/**
 * stead_draft_find:
 * @root: a form, or what has forms in it, seen or not
 * @out_name: (out) (transfer full): what something is typed for
 *
 * Returns: (transfer none) (nullable): the first form with something typed, also for a thing
 *   that it does not show just now; %NULL leaves @out_name alone
 */
GtkWidget *stead_draft_find (GtkWidget  *root,
                             char      **out_name);

G_END_DECLS
