/* stead-joint-private.h - the parts of one batch as the log has them, and the words for them. */
#pragma once

#include "answer/stead-joint-answer.h"

G_BEGIN_DECLS

/* Reads the batch, what is shared, and each part's "log"; the rest is left empty. */
gboolean stead_joint_read (SteadStore        *store,
                           SteadJointAnswer  *self,
                           gint64             batch_id,
                           GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* What the core takes of @part as it stands. */
SteadJointProduct stead_joint_product_of (const SteadJointPart *part);

void stead_joint_put_in_words (SteadJointAnswer *self);

G_END_DECLS
