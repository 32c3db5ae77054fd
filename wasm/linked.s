// Without a file of this kind the compiler refuses a function that another package has the body of.
