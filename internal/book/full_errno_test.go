package book

import "syscall"

// errFull is what the system says where a disk is full.
const errFull = syscall.ENOSPC
