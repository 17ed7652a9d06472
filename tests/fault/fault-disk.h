/* fault-disk.h - a disk that fails, or loses power, at a chosen moment.
 *
 * A file system of SQLite's own kind (a VFS) that stands over the real one and
 * becomes the default.  Files that end in ".part" are copies that are put onto the
 * disk by other means, and are let through.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

void     fault_disk_install   (void);

/* The n-th reading, writing, cutting, syncing, making or deleting fails, from 1. */
void     fault_disk_fail_at   (int n);
/* Ends that.  Returns: whether anything failed */
gboolean fault_disk_mend      (void);

/* At the n-th writing, cutting, syncing, making or deleting the power goes, and
 * nothing more is done; 0: it stays on for now. */
void     fault_disk_cut_at    (int n);
/**
 * fault_disk_lose_power:
 *
 * Leaves on the disk what a power cut leaves: what was synced, and of the rest any
 * part, in pieces of 512 bytes and in any order.  All files must be closed.
 *
 * Returns: whether the power had gone before
 */
gboolean fault_disk_lose_power (void);

G_END_DECLS
